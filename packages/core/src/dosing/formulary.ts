import type { Dose } from "../units/index.ts";
import type { Citation, Source } from "./citation.ts";
import type { AgeBandRule, Rule, SimpleRule, WeightBandRule } from "./rule.ts";
import type { Preparation, Strength } from "./strength.ts";

/** Everything a site gives, with the sources it rests on. It ships as an unsigned draft. */
export interface Formulary {
  readonly id: string;
  readonly version: string;
  readonly title: string;
  /** The language of its words as a tag of BCP 47, such as "fr"; English where absent, as the draft is. Numbers in it are written the same in any language. */
  readonly language?: string;
  readonly signed: boolean;
  readonly medicines: readonly Medicine[];
  /** The energies that the site's defibrillators can be set to, J, rising. */
  readonly deviceEnergiesJ: readonly number[];
  /** The headings of the screen in the order of the site; those it does not name follow in the order of the medicines. */
  readonly problemOrder?: readonly ProblemId[];
  /** The site's changes that are in it, oldest first. */
  readonly overlays?: readonly OverlayRecord[];
  /** Who answers for it. It holds as long as the fingerprint does; see `verifySignOff` of the formulary package. */
  readonly signOff?: SignOff;
  readonly sources: readonly Source[];
}

/** Who reviewed a formulary, when, and the fingerprint of what they saw. */
export interface SignOff {
  readonly name: string;
  readonly role: string;
  /** Day of the review, as 2026-11-25. */
  readonly date: string;
  /** Who reviewed it independently as well, where one pair of eyes is not enough. */
  readonly second?: Reviewer;
  /** SHA-256 over the canonical text of everything else in the formulary, names, roles and dates included; hexadecimal. */
  readonly fingerprint: string;
}

/** Somebody who answers for a formulary. */
export interface Reviewer {
  readonly name: string;
  readonly role: string;
  /** Day of the review, as 2026-11-25. */
  readonly date: string;
}

/** One set of changes that a site has made, so that each can be traced from the file alone. */
export interface OverlayRecord {
  readonly id: string;
  readonly version: string;
  readonly title: string;
  /** Version of the formulary it was made for. */
  readonly baseVersion: string;
  readonly changes: readonly {
    readonly change: "set" | "add" | "remove";
    readonly at: string;
    readonly reason: string;
  }[];
}

/** One medicine, fluid or electrical energy. */
export interface Medicine {
  readonly id: string;
  /** International non-proprietary name, with tall-man letters where the safe-medication list has them. */
  readonly name: string;
  readonly kind: "medicine" | "fluid" | "energy";
  /** Why it is a high-alert medicine: a slip with it does more harm than with others, so it needs two pairs of eyes. */
  readonly highAlert?: Note;
  readonly strengths: readonly Strength[];
  readonly incompatibilities: readonly Note[];
  readonly uses: readonly Use[];
}

export type ProblemId =
  | "arrest"
  | "airway"
  | "seizure"
  | "shock"
  | "anaphylaxis"
  | "infection"
  | "bleeding"
  | "salts-and-sugar"
  | "breathing"
  | "pain"
  | "brain"
  | "fluids"
  | "poisoning";

export type Route =
  | "IV"
  | "IO"
  | "IM"
  | "SC"
  | "buccal"
  | "intranasal"
  | "oral"
  | "rectal"
  | "nebulised"
  | "inhaled"
  | "intratracheal"
  | "external";

/** What a medicine is given for, by which route, by which rule. */
export interface Use {
  readonly id: string;
  readonly title: string;
  readonly problem: ProblemId;
  readonly indication: string;
  readonly routes: readonly Route[];
  /** The doses that published sources give; more than one where they disagree. */
  readonly options: readonly DoseOption[];
  /** The id of the option that is computed unless the site or the reader chooses another. */
  readonly defaultOption: string;
  /** Why that one; needed where there is more than one. */
  readonly defaultReason?: string;
  /** Ids of strengths, the preferred one first; empty for energies and for fluids given as they are. */
  readonly strengths: readonly string[];
  /** For infusions: how the syringe is made up. */
  readonly preparations?: readonly Preparation[];
  /** Volumes are rounded as the source of the dose says, in place of the marks of the syringe. */
  readonly rounding?: VolumeRounding;
  readonly repeat?: Repeat;
  readonly administration: Administration;
  readonly limits: readonly ApplicabilityLimit[];
  readonly contraindications: readonly Note[];
  readonly cautions: readonly Note[];
  readonly monitoring: readonly Note[];
  /** Whether the rule was written for the first 28 days of life as well. */
  readonly neonates: "covered" | "not-covered";
}

/** "To the next whole mL". A maximum still holds. */
export interface VolumeRounding {
  readonly toMl: number;
  readonly direction: "up" | "down" | "nearest";
  /** Holds from this total weight on; below it the marks of the syringe do, as a whole mL would be too much of the dose. */
  readonly fromKg?: number;
  readonly citations: readonly Citation[];
}

/** One published way to dose this use. */
export interface DoseOption {
  readonly id: string;
  readonly title: string;
  readonly rule: Rule;
  /** The doses after the first, where they differ from it. */
  readonly further?: readonly SimpleRule[];
  readonly citations: readonly Citation[];
}

export interface Repeat {
  /** The first dose included; absent: no fixed number. */
  readonly maximumDoses?: number;
  readonly intervalMin?: { readonly low: number; readonly high: number };
  readonly cumulativeMaximum?: CumulativeMaximum;
  readonly text: string;
  readonly citations: readonly Citation[];
}

/** The most that may be given over all doses: the smaller of the two where both are known. */
export interface CumulativeMaximum {
  readonly perKg?: Dose;
  readonly total?: Dose;
  /** In place of both, where they differ by total weight: bands [lowKg, highKg), the last one open. */
  readonly byWeight?: readonly CumulativeBand[];
  /** Counts the doses of the last so many hours; all of them where absent. */
  readonly withinH?: number;
}

interface CumulativeBand {
  readonly lowKg: number;
  readonly highKg?: number;
  readonly perKg?: Dose;
  readonly total?: Dose;
}

/** How it is given. */
export interface Administration {
  readonly text: string;
  /** Time over which one dose is given, minutes. */
  readonly overMin?: { readonly low: number; readonly high: number };
  readonly maximumRate?: MaximumRate;
  /** Parts of a dose in mL that run one after the other; their shares make 1. */
  readonly portions?: readonly Portion[];
  /** The strongest that may be given, per mL. */
  readonly maximumConcentrationPerMl?: Dose;
  /** Fluid the drawn-up dose is added to before it is given; the rule is in mL. */
  readonly dilution?: {
    readonly diluent: string;
    readonly volume: SimpleRule | AgeBandRule | WeightBandRule;
    readonly citations: readonly Citation[];
  };
  readonly citations: readonly Citation[];
}

/** "Half in the first 8 hours." */
export interface Portion {
  readonly share: number;
  readonly overH: number;
}

/** The most in one `per`. */
export interface MaximumRate {
  readonly amount: Dose;
  readonly perKg: boolean;
  readonly per: "min" | "h";
  /** Beside an amount per kg: the most in one `per`, whatever the weight says. */
  readonly maximum?: Dose;
}

/** Children the use is meant for, as [low, high) of age or total weight; outside: refused or warned. */
export type ApplicabilityLimit = {
  readonly effect: "contraindicated" | "caution";
  readonly reason: string;
  readonly citations: readonly Citation[];
} & (
  | {
      readonly by: "age";
      readonly lowMonths?: number;
      readonly highMonths?: number;
      /** Where the age is not known: a child of this total weight or more is taken to be past lowMonths. */
      readonly passedAtKg?: number;
    }
  | { readonly by: "weight"; readonly lowKg?: number; readonly highKg?: number }
);

/** One sentence for the reader, with its source. */
export interface Note {
  readonly text: string;
  readonly citations: readonly Citation[];
}
