import type { Centimetres, Kilograms } from "../units/index.ts";
import type { BoxCox } from "./box-cox.ts";
import type { SegmentIssue } from "./length-from-segment.ts";
import type { MeasurementName, MissingLimb } from "./measurements.ts";

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
  /** Degrees of freedom of Student's t; undefined: normal. */
  readonly tailDf?: number | undefined;
}

/** The weight of one child as a distribution. */
export interface WeightEstimate {
  /** Median of the distribution, kg. */
  readonly totalKg: Kilograms;
  /** 2.5 % quantile, kg. */
  readonly low95Kg: Kilograms;
  /** 97.5 % quantile, kg. */
  readonly high95Kg: Kilograms;
  /** The lying length used, cm, given or worked out; absent when the estimate went by age. */
  readonly lengthCm?: Centimetres;
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
  /** Given, but the model has no use for it: not fitted at this length, or an earlier weight without an age now. */
  | { readonly type: "measurement-not-used"; readonly measurement: MeasurementName }
  /**
   * The other measurements say this is not of the same child. It is left out of the estimate; or, where two equally trusted
   * measurements contradict each other, the estimate is by the one or the other and says so of both.
   */
  | {
      readonly type: "measurement-conflict";
      readonly measurement: MeasurementName;
      /** As given; absent for a judgement such as build. */
      readonly value?: number;
      /** What the others would have expected in 99 of 100 such children. */
      readonly low: number;
      readonly high: number;
      /** Predictive probability given the others. */
      readonly p: number;
      readonly outcome: "left-out" | "one-or-the-other";
    }
  /** Left out because fluid or a pregnancy makes it measure something else. */
  | {
      readonly type: "measurement-set-aside";
      readonly measurement: MeasurementName;
      readonly because: "oedema" | "pregnant";
    }
  /** The estimate is of the weight without the fluid, or before the pregnancy. */
  | { readonly type: "usual-weight"; readonly because: "oedema" | "pregnant" }
  /** The weight of the missing limb was taken off, by adult figures. */
  | { readonly type: "missing-limb"; readonly limb: MissingLimb; readonly share: number }
  /** The length was worked out from a part of the body. */
  | {
      readonly type: "length-from-segment";
      readonly measurement: MeasurementName;
      readonly lengthCm: number;
      /** Standard error of the equation, cm. */
      readonly sdCm: number;
    }
  /** No length: the estimate goes by age, and no ideal weight can be given. */
  | { readonly type: "no-length" }
  /** No girth: build is unknown and the range is wide. */
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
  /** Neither length nor age: an arm alone is off by more than 20 % in most small children. */
  | { readonly type: "length-missing" }
  | SegmentIssue
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
