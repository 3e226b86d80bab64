import type { Kilograms } from "../units/index.ts";
import type { BoxCox } from "./box-cox.ts";
import type { MeasurementName } from "./measurements.ts";

/**
 * One component of the weight distribution: (z - zMean) / zScale is standard normal, or Student's t, where z is the
 * Box-Cox z-score of the weight on `curve`.
 */
export interface WeightComponent {
  /** Probability of this component; those of an estimate add to 1. */
  readonly probability: number;
  /** The weight curve at this length and sex, in ln kg. */
  readonly curve: BoxCox;
  readonly zMean: number;
  readonly zScale: number;
  /** Degrees of freedom of Student's t; absent: normal. */
  readonly tailDf?: number;
}

/** The weight of one child as a distribution. */
export interface WeightEstimate {
  /** Median of the distribution, kg. */
  readonly totalKg: Kilograms;
  /** 2.5 % quantile, kg. */
  readonly low95Kg: Kilograms;
  /** 97.5 % quantile, kg. */
  readonly high95Kg: Kilograms;
  /** The measurements it rests on, in order of entry. */
  readonly rests: readonly MeasurementName[];
  /** The distribution itself; empty when the weight was read from a scale. */
  readonly components: readonly WeightComponent[];
  readonly warnings: readonly BodyWarning[];
}

/** Usable, but the reader must know. */
export type BodyWarning =
  /** The measurement lies outside what the fit has seen at this length; the answer is an extrapolation. */
  | {
      readonly type: "measurement-extrapolated";
      readonly measurement: MeasurementName;
      readonly value: number;
      readonly low: number;
      readonly high: number;
    }
  /** Given, but the present model makes no use of it. */
  | { readonly type: "measurement-not-used"; readonly measurement: MeasurementName }
  /** Length alone: build is unknown and the range is wide. */
  | { readonly type: "no-girth" }
  /** The scale weight given lies outside the 99.5 % range that the measurements predict. */
  | {
      readonly type: "scale-weight-unlikely";
      readonly scaleKg: number;
      readonly low: number;
      readonly high: number;
    };

/** Why no weight can be given. */
export type BodyIssue =
  | { readonly type: "length-missing" }
  | {
      readonly type: "measurement-out-of-range";
      readonly measurement: MeasurementName;
      readonly value: number;
      readonly low: number;
      readonly high: number;
      /** A slip of unit that would explain the value, proposed and never applied. */
      readonly proposal?: UnitSlip;
    };

/** What the number would be if it had been given in another unit. */
export interface UnitSlip {
  readonly from: "m" | "cm" | "mm" | "in";
  /** The value in the unit that was asked for. */
  readonly value: number;
}
