import type { SplineBasis } from "./cubic-spline.ts";
import type { Sex } from "./measurements.ts";

/** The quantities the joint model knows, with the weight first. */
export const quantities = ["weight", "arm", "waist", "thigh", "calf", "age", "head"] as const;

export type Quantity = (typeof quantities)[number];

/** Coefficients of the three curves of one quantity by ln length. */
export interface CurveCoefficients {
  readonly logMedian: readonly number[];
  readonly logSigma: readonly number[];
  readonly lambda: readonly number[];
}

export interface SexReference {
  /** Kilograms, millimetres (arm), centimetres (waist, thigh, calf, head) and months. */
  readonly curves: Readonly<Partial<Record<Quantity, CurveCoefficients>>>;
  /** atanh of the correlation of two z-scores by ln length, under `first~second` in the order of `quantities`. */
  readonly correlations: Readonly<Record<string, readonly number[]>>;
}

/** The shape of what is left of the weight's z once something else than length is known (see `conditionWeight`). */
export interface Residual {
  /** Power of the local slope of the weight curve with which the spread follows the expected z. */
  readonly spreadPower: number;
  /** Degrees of freedom of Student's t, an even number. */
  readonly tailDf: number;
  /** Scale of that t, in units of the conditional standard deviation. */
  readonly scale: number;
}

/** What the fit writes and the model reads: `body/reference/*.json`. */
export interface BodyReference {
  readonly version: string;
  readonly sourceIds: readonly string[];
  /** Children fitted. */
  readonly children: number;
  /** Basis of every curve, in ln (lying length in cm). */
  readonly basis: SplineBasis;
  /** Lengths between which each quantity was fitted, cm. */
  readonly lengthRangeCm: Readonly<Partial<Record<Quantity, readonly [low: number, high: number]>>>;
  /** z-scores between which all but 1 in 1,000 of the children fitted lie, at each end. */
  readonly fittedZ: Readonly<Partial<Record<Quantity, readonly [low: number, high: number]>>>;
  /** Logit of the share of boys by ln length. */
  readonly boys: readonly number[];
  readonly residual: Residual;
  readonly sexes: Readonly<Record<Sex, SexReference>>;
}
