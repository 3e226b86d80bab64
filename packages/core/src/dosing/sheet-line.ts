import type { Dose } from "../units/index.ts";
import type { SourceRef } from "./citation.ts";
import type { DosingWarning, Settlement, Unavailable } from "./dosing-warning.ts";
import type { CumulativeMaximum, ProblemId } from "./formulary.ts";
import type { Basis } from "./weights.ts";
import type { WorkingStep } from "./working-step.ts";

/**
 * One use of one medicine for one child. `unavailable` tells the two kinds apart: where it is set there is no
 * dose, and it says why.
 */
export type SheetLine = DoseLine | UnavailableLine;

interface LineHead {
  /** `medicine.use`, stable across versions of the formulary: `adrenaline.arrest`. */
  readonly id: string;
  /** Name of the medicine for people. */
  readonly medicine: string;
  /** What it is for, for people. */
  readonly use: string;
  /** The problem it is listed under on screen and paper. */
  readonly problem: ProblemId;
  readonly route: string;
  /** The published dose that was computed, and the others that may be chosen instead. */
  readonly option: OptionRef;
  readonly alternatives: readonly OptionRef[];
  /** Why the default option is the default; absent where there is only one. */
  readonly optionReason?: string;
  readonly guidance: Guidance;
  readonly working: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
  readonly sources: readonly SourceRef[];
}

export interface DoseLine extends LineHead {
  readonly unavailable?: undefined;
  readonly basis: Basis;
  /** The weight of that basis that was used, kg, as written in the working. */
  readonly basisKg: number;
  /** The dose as drawn up, after limits and rounding; for an infusion the starting dose per kg and time. */
  readonly dose: Dose;
  /** What the dose is of, where that is not the medicine as labelled: "calcium". */
  readonly of?: string;
  readonly equivalents?: readonly DoseEquivalent[];
  readonly volume?: DrawnVolume;
  /** Of an inhaler, in place of a volume. */
  readonly puffs?: CountedPuffs;
  /** The quickest and the most concentrated it may be given, where the formulary bounds that. */
  readonly giving?: GivingLimits;
  readonly rate?: { readonly mlPerH: number; readonly concentration: string };
  /** The parts of a fluid that run one after the other, as a pump can be set. */
  readonly portions?: readonly FluidPortion[];
  /** For infusions: every way the syringe can be made up, the default one first. */
  readonly preparations?: readonly PreparedInfusion[];
  /** Fluid the dose is added to before it is given. */
  readonly addedTo?: { readonly ml: number; readonly diluent: string };
  readonly limitedBy?: "single-maximum" | "minimum";
  /** The second and later doses, where they differ from the first. */
  readonly further: readonly FurtherDose[];
  readonly robustness?: Robustness;
  /** Why there is no robustness; set exactly where that is absent. */
  readonly robustnessOmitted?: RobustnessOmitted;
}

export interface UnavailableLine extends LineHead {
  readonly unavailable: Unavailable;
}

/** The same dose counted as another substance, as the label states it: "1.32 mmol of calcium". */
export interface DoseEquivalent {
  readonly dose: Dose;
  readonly of: string;
}

/** What the limits of rate and concentration come to for this dose. */
export interface GivingLimits {
  /** Not given in less time than this, minutes. */
  readonly shortestMin?: number;
  /** Not given in a smaller volume than this, mL. */
  readonly leastMl?: number;
}

/** A volume to draw up. */
export interface DrawnVolume {
  readonly ml: number;
  /** What is drawn up: "0.1 mg/mL"; of the dilution where there is one. */
  readonly strength: string;
  /** Capacity of the syringe that measures it, mL; absent above the largest. */
  readonly syringeMl?: number;
  /** Takes `takeMl` of `strength` and `addMl` of `diluent` first. */
  readonly dilution?: {
    readonly strength: string;
    readonly takeMl: number;
    readonly addMl: number;
    readonly diluent: string;
  };
}

/** Whole puffs of a metered-dose inhaler. */
export interface CountedPuffs {
  readonly puffs: number;
  /** What each puff holds, as labelled: "100 micrograms/puff". */
  readonly strength: string;
  /** Puffs in a full inhaler. */
  readonly containerPuffs: number;
}

export interface FurtherDose {
  readonly dose: Dose;
  readonly volume?: DrawnVolume;
  readonly puffs?: CountedPuffs;
  readonly limitedBy?: "single-maximum" | "minimum";
  readonly working: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** So many mL over so many hours. */
export interface FluidPortion {
  readonly ml: number;
  readonly overH: number;
  readonly mlPerH: number;
}

export interface FirstHour {
  readonly ml: number;
  readonly allowanceMl: number;
  readonly sharePercent: number;
}

/** One way to make up and run an infusion for this child. */
export interface PreparedInfusion {
  readonly id: string;
  readonly kind: "fixed" | "per-kg";
  readonly amount: Dose;
  readonly totalMl: number;
  readonly diluent: string;
  readonly concentration: string;
  /** Rate at the start and at the ends of the range, mL/h, as a pump can be set. */
  readonly mlPerH: number;
  readonly lowMlPerH: number;
  readonly highMlPerH: number;
  /** The dose that 1 mL/h gives. */
  readonly dosePerMlPerH: Dose;
  /** How long the syringe lasts at the starting rate, hours. */
  readonly lastsH: number;
  /** Fluid of the first hour at the starting rate, beside the child's maintenance of one hour. */
  readonly firstHour: FirstHour;
  readonly working: readonly WorkingStep[];
}

export interface OptionRef {
  readonly id: string;
  readonly title: string;
}

/** What the formulary says beside the dose; words of the formulary. */
export interface Guidance {
  readonly indication: string;
  readonly administration: string;
  readonly repeat?: string;
  readonly cumulativeMaximum?: CumulativeMaximum;
  readonly contraindications: readonly string[];
  readonly cautions: readonly string[];
  readonly incompatibilities: readonly string[];
  readonly monitoring: readonly string[];
}

/** How likely the dose as drawn up lies outside the accepted range per kg of the child's true weight. */
export interface Robustness {
  /** Probability over the weight distribution, 0 to 1. */
  readonly probabilityOutside: number;
  readonly acceptedLowPerKg: number;
  readonly acceptedHighPerKg: number;
  /** Where that is above the stated threshold: the first measurement that would bring it under. */
  readonly settledBy?: Settlement;
}

/** The reason why a line has no robustness. */
export type RobustnessOmitted =
  /** The weight was read from a scale, so nothing is left to chance. */
  | "weight-measured"
  /** The rule goes by ideal, adjusted or lean weight: the true total weight does not decide what is right. */
  | "basis-not-total"
  /** The formulary has no accepted range per kg for it. */
  | "no-accepted-range"
  /** An infusion is adjusted to its effect. */
  | "titrated";
