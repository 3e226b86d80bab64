import type { Dose } from "../units/index.ts";

/** One dose that has been given. */
export interface GivenRecord {
  /** Id of the line on the sheet: "adrenaline.arrest". */
  readonly lineId: string;
  readonly dose: Dose;
  /** When, in minutes on any clock that runs through the whole case. */
  readonly atMinutes: number;
}

/** What has been given of one use, what is left of it, and when the next dose is due. */
export interface TrackedLine {
  readonly lineId: string;
  readonly medicine: string;
  readonly use: string;
  readonly doses: number;
  readonly total: Dose;
  /** Of the same medicine under every use, as far as it is counted in comparable units. */
  readonly totalOfMedicine: Dose;
  /** The most over all doses for this child; `withinH` where it counts only the last hours. */
  readonly maximum?: { readonly dose: Dose; readonly withinH?: number };
  /** What may still be given under the maximum; never below nothing. */
  readonly remaining?: Dose;
  /** How many doses are left; never below 0. */
  readonly dosesLeft?: number;
  /**
   * From when, and until when, the next dose is due. Where the hours that count are used up: not before doses have left
   * them. Absent where no interval is known or no dose is left.
   */
  readonly nextDue?: { readonly earliestMinutes: number; readonly latestMinutes: number };
}

export type TrackingWarning =
  /** The formulary has no such use: nothing is known of its limits. */
  | { readonly type: "unknown-line"; readonly lineId: string; readonly atMinutes: number }
  /** Counted in a unit that the rule cannot be compared with, and so left out of the sums. */
  | {
      readonly type: "unit-not-comparable";
      readonly lineId: string;
      readonly atMinutes: number;
      readonly dose: Dose;
      readonly expectedUnit: Dose["unit"];
    }
  | {
      readonly type: "single-maximum-passed";
      readonly lineId: string;
      readonly atMinutes: number;
      readonly dose: Dose;
      readonly maximum: Dose;
    }
  | {
      readonly type: "cumulative-maximum-passed";
      readonly lineId: string;
      readonly atMinutes: number;
      readonly total: Dose;
      readonly maximum: Dose;
    }
  | {
      readonly type: "too-many-doses";
      readonly lineId: string;
      readonly atMinutes: number;
      readonly doses: number;
      readonly maximumDoses: number;
    }
  | {
      readonly type: "too-soon";
      readonly lineId: string;
      readonly atMinutes: number;
      readonly earliestMinutes: number;
    }
  /** The maximum counts per kg of a weight that is not known, so that it could not be checked. */
  | { readonly type: "maximum-not-known"; readonly lineId: string };

export interface TrackedDoses {
  /** In the order of their first dose. */
  readonly lines: readonly TrackedLine[];
  readonly warnings: readonly TrackingWarning[];
}
