/** What a rule goes by. */
export type LookupQuantity = "age" | "length" | "total-weight" | "ideal-weight" | "arm" | "tube";

export type LookupUnit = "mm" | "cm" | "Fr" | "G" | "mL" | "size" | "/min" | "mmHg" | "mL/h";

/** From low to high, ends included. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Why one rule stands before the others. */
export type ChosenBecause = "age-known" | "length-measured" | "length-before-height-age" | "under-4-kg";

/**
 * One step of the arithmetic, as data; `core/wording` renders each to a sentence.
 *
 * Values of a quantity stand in its unit: age in months, length in cm, weights in kg, arm and tube in mm.
 */
export type LookupStep =
  /** The age at which the median child is as long as this one; `bound` where the length is past the medians. */
  | {
      readonly step: "height-age";
      readonly lengthCm: number;
      readonly ageMonths: number;
      readonly bound?: "at-least" | "at-most";
    }
  /** value x times / over + plus; the age in years. */
  | {
      readonly step: "linear";
      readonly by: LookupQuantity;
      readonly value: number;
      readonly times?: number;
      readonly over?: number;
      readonly plus?: number;
      readonly result: number;
      readonly unit: LookupUnit;
    }
  /** The band [low, high) of a table that applies. */
  | {
      readonly step: "band";
      readonly by: LookupQuantity;
      readonly value: number;
      readonly low?: number;
      readonly high?: number;
    }
  /** The rule is not followed past `at`. */
  | { readonly step: "held"; readonly by: LookupQuantity; readonly value: number; readonly at: number }
  /** To a size that is made. */
  | {
      readonly step: "size";
      readonly exact: number;
      readonly to: "nearest" | "below";
      readonly result: number;
      readonly unit: LookupUnit;
    }
  | {
      readonly step: "per-kg";
      readonly perKg: Span | number;
      readonly by: "total-weight" | "ideal-weight";
      readonly kg: number;
      readonly result: Span | number;
      readonly unit: LookupUnit;
    }
  | {
      readonly step: "share-of-arm";
      readonly percent: number;
      readonly armMm: number;
      readonly result: number;
    }
  | { readonly step: "chosen"; readonly because: ChosenBecause };
