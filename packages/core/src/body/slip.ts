import type { MeasurementName, Measurements } from "./measurements.ts";

/** The measurements a slip is looked for in: numbers that are typed from a tape, a scale or a date of birth. */
export type SlipName = Extract<
  MeasurementName,
  "lengthCm" | "armMm" | "waistCm" | "thighCm" | "calfCm" | "headCm" | "ageMonths" | "carerKg" | "scaleKg"
>;

/** A unit a number may have been read in while another was asked for. */
export type SlipUnit = "mm" | "cm" | "m" | "in" | "ft" | "g" | "lb" | "mo" | "y";

/** One number of a slip: as given, and as it would be without the slip. */
export interface SlipChange {
  readonly measurement: SlipName;
  readonly given: number;
  /** In the unit of the measurement; absent where all that can be proposed is to leave it out. */
  readonly value?: number;
}

/** How a number came to be wrong. */
export type SlipKind =
  /** Read in `from`, written as if in the unit that was asked for. */
  | { readonly type: "unit"; readonly from: SlipUnit }
  /** The decimal point lost, moved, or a nought too many or too few. */
  | { readonly type: "decimal-point" }
  /** Two neighbouring digits in the wrong order. */
  | { readonly type: "digits-exchanged" }
  /** Two numbers written into each other's fields. */
  | { readonly type: "fields-exchanged" }
  /** Of another child, or misread in a way that nothing explains. */
  | { readonly type: "outlier" };

/** A slip that would explain measurements which do not belong together; a proposal, never applied unasked. */
export type Slip = SlipKind & {
  /** What changes: one number, two that change places, or all that were read off one tape. */
  readonly changes: readonly SlipChange[];
  /** All measurements as they would be without the slip. */
  readonly proposed: Measurements;
  /** Probability of this explanation, among all that were tried and that nothing is wrong, 0 to 1. */
  readonly p: number;
};
