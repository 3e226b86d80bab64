import type { Dose } from "../units/index.ts";
import type { Basis } from "./weights.ts";
import type { Concentration } from "./working-step.ts";

/** Usable, but the reader must know. */
export type DosingWarning =
  | {
      readonly type: "limited";
      readonly by: "single-maximum" | "minimum";
      readonly from: Dose;
      readonly to: Dose;
    }
  /** Rounding moved the dose by more than half a percent; `aboveTolerance` when by more than 5 %. */
  | {
      readonly type: "rounded";
      readonly errorPercent: number;
      readonly aboveTolerance: boolean;
      /** Rounded as the source of the dose says. */
      readonly byRule?: true;
    }
  /** What is drawn up is stronger than it may be given: to be made up to at least this volume. */
  | { readonly type: "too-concentrated"; readonly ml: number; readonly leastMl: number }
  /** Nothing in the formulary says how the syringe is made up for this weight, so there is a dose and no rate. */
  | { readonly type: "no-preparation"; readonly kg: number }
  /** A smaller burn than the rule was written for. */
  | { readonly type: "small-burn"; readonly burnPercent: number; readonly fromPercent: number }
  /** The first hour of the infusion alone brings more fluid than the child needs in one. */
  | { readonly type: "fluid-load"; readonly ml: number; readonly allowanceMl: number }
  /** Too small to draw up from the strength at hand: to be diluted first, by the recipe given. */
  | { readonly type: "diluted"; readonly measurableMl: number; readonly to: Concentration }
  /** Too small to draw up from the preferred strength: another strength of the list was taken. */
  | { readonly type: "weaker-strength"; readonly measurableMl: number; readonly to: Concentration }
  /** No strength or dilution at hand lets a syringe measure it within 10 %; the dose is exact and has no volume. */
  | { readonly type: "not-measurable"; readonly ml: number }
  /** Less than half a puff, or a puff is above the maximum: this inhaler cannot give it. */
  | { readonly type: "not-in-puffs"; readonly puffs: number; readonly perPuff: Dose }
  /** Lighter than ideal: dosed on total weight whatever the rule says. */
  | {
      readonly type: "basis-swapped";
      readonly from: Basis;
      readonly fromKg: number;
      readonly totalKg: number;
    }
  /** The rule would give more than 20 % more or less on the other weight. */
  | { readonly type: "bases-differ"; readonly totalDose: Dose; readonly idealDose: Dose }
  /** The age would decide something here, and it is not known. */
  | { readonly type: "age-needed"; readonly for: "band" | "limit" | "neonate"; readonly reason?: string }
  | {
      readonly type: "outside-weight-range";
      readonly kg: number;
      readonly lowKg?: number;
      readonly highKg?: number;
      readonly reason: string;
    }
  | {
      readonly type: "outside-age-range";
      readonly ageMonths: number;
      readonly lowMonths?: number;
      readonly highMonths?: number;
      readonly reason: string;
    }
  /** First 28 days of life, or under 3 kg, and the rule was not written for that. */
  | { readonly type: "neonate"; readonly because: "age" | "weight" }
  /** The dose may well lie outside the accepted range for the child's true weight. */
  | {
      readonly type: "not-robust";
      readonly probabilityOutside: number;
      /** The measurement that would settle it, of those that can be taken. */
      readonly settledBy?: Settlement;
    }
  /** Nothing in the list can deliver it as the accepted range asks (a coarse device step, a slow pump). */
  | { readonly type: "outside-accepted-range"; readonly dosePerKg: Dose };

/** What one more measurement would make of the probability that a dose lies outside its accepted range. */
export interface Settlement {
  readonly measurement: string;
  readonly probabilityOutside: number;
}

/** Why a use has no dose for this child. */
export type Unavailable =
  /** The rule needs a weight that is not known. */
  | { readonly type: "weight-missing"; readonly basis: Basis }
  | { readonly type: "length-missing" }
  /** The rule goes by the burnt share of the body surface: what each percent of it would get. */
  | { readonly type: "burn-percent-missing"; readonly perPercent: Dose }
  /** The rule goes by age alone, and the age is not known: what each age would get. */
  | { readonly type: "age-missing"; readonly choices: readonly AgeChoice[] }
  /** No band of the rule holds this child. */
  | {
      readonly type: "outside-bands";
      readonly by: "age" | "weight";
      readonly value: number;
      readonly low: number;
      readonly high?: number;
    }
  | {
      readonly type: "contraindicated";
      readonly by: "age" | "weight";
      readonly value: number;
      readonly low?: number;
      readonly high?: number;
      readonly reason: string;
    };

/** What a child of [lowMonths, highMonths) would get. */
export interface AgeChoice {
  readonly lowMonths: number;
  readonly highMonths?: number;
  readonly dose: Dose;
  readonly volume?: { readonly ml: number; readonly strength: string };
}
