import type { SplineBasis } from "./cubic-spline.ts";
import type { Sex } from "./measurements.ts";

/** The quantities the joint model knows, with the weight first. */
export const quantities = ["weight", "length", "arm", "waist", "thigh", "calf", "head", "age"] as const;

/** Kilograms, centimetres (length, waist, thigh, calf, head), millimetres (arm) and months since conception (age). */
export type Quantity = (typeof quantities)[number];

/** The quantity every curve is drawn along, and how far, in its own unit. */
export interface ModelIndex {
  readonly quantity: "length" | "age";
  /** Outside these nothing is computed. */
  readonly low: number;
  readonly high: number;
  /** Outside these the curves are continued beyond the data. */
  readonly fittedLow: number;
  readonly fittedHigh: number;
  /** Step of the table the curves are read from, fine enough that linear interpolation stays within 0.01 % in weight. */
  readonly step: number;
}

/** Coefficients of the three curves of one quantity by ln index. */
export interface CurveCoefficients {
  readonly logMedian: readonly number[];
  readonly logSigma: readonly number[];
  readonly lambda: readonly number[];
}

export interface SexReference {
  readonly curves: Readonly<Partial<Record<Quantity, CurveCoefficients>>>;
  /** atanh of the correlation of two z-scores by ln index, under `first~second` in the order of `quantities`. */
  readonly correlations: Readonly<Record<string, readonly number[]>>;
}

/** The shape of what is left of the weight's z once something else than the index is known (see `conditionWeight`). */
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
  readonly index: ModelIndex;
  /** Basis of every curve, in ln index. */
  readonly basis: SplineBasis;
  /** Index values between which each quantity was fitted. */
  readonly indexRange: Readonly<Partial<Record<Quantity, readonly [low: number, high: number]>>>;
  /** z-scores between which all but 1 in 1,000 of the children fitted lie, at each end. */
  readonly fittedZ: Readonly<Partial<Record<Quantity, readonly [low: number, high: number]>>>;
  /** Logit of the share of boys by ln index. */
  readonly boys: readonly number[];
  readonly residual: Residual;
  /** Coefficients by ln index of 1, m, m^2 and m^3: what the straight line misses at an expected z of m (see `bendOf`). */
  readonly bend: readonly (readonly number[])[];
  readonly sexes: Readonly<Record<Sex, SexReference>>;
}
