import type { Quantity } from "./body-reference.ts";
import { boxCoxSlope, boxCoxZ } from "./box-cox.ts";
import type { BodyAt } from "./indexed-model.ts";

/** A quantity observed with an error of its own, beyond what the children of the fit were measured with. */
export type Observation =
  | {
      readonly quantity: Quantity;
      /** ln of the value, in the unit of the model. */
      readonly logValue: number;
      /** Variance of the extra error of ln value; below 0 when several readings were averaged. */
      readonly logVariance: number;
    }
  | {
      readonly quantity: Quantity;
      /** A judgement that is a z-score in itself, such as build by eye. */
      readonly z: number;
      readonly zVariance: number;
    };

/** A z-score given observations. */
export interface Conditioned {
  readonly mean: number;
  readonly variance: number;
  /** ln density of the observations themselves, up to a constant that all sexes and lengths share. */
  readonly logDensity: number;
  /** Squared distance of the observations from what is expected, in standard deviations: chi-squared, one degree for each. */
  readonly squaredDistance: number;
}

/** An observation never tells more than this share of its own variance away. */
const leastVariance = 0.05;

/**
 * Conditions the z-score of one quantity on any number of observations of the joint normal.
 *
 * With R the correlations of the observed z-scores, the error variances added on its diagonal, and r those with the
 * target: mean = r R^-1 z and variance = 1 - r R^-1 r, by a Cholesky factor that z and r are carried through.
 *
 * Throws a `RangeError` when the correlations are not positive definite, which the fit rules out.
 */
export function conditionNormal({
  at,
  target,
  observations,
}: {
  at: BodyAt;
  target: Quantity;
  observations: readonly Observation[];
}): Conditioned {
  const n = observations.length;
  const factor: number[] = [];
  const u: number[] = [];
  const v: number[] = [];
  let mean = 0;
  let variance = 1;
  let logDensity = 0;
  let squaredDistance = 0;
  for (let i = 0; i < n; i++) {
    const observation = observations[i] as Observation;
    const { quantity } = observation;
    let z: number;
    let slope = 1;
    let pivot: number;
    if ("z" in observation) {
      z = observation.z;
      pivot = 1 + observation.zVariance;
    } else {
      const curve = at.curve(quantity);
      z = boxCoxZ(curve, observation.logValue);
      slope = boxCoxSlope(curve, observation.logValue);
      pivot = Math.max(1 + observation.logVariance * slope * slope, leastVariance);
    }
    let r = at.correlation(target, quantity);
    for (let j = 0; j < i; j++) {
      let sum = at.correlation(quantity, (observations[j] as Observation).quantity);
      for (let k = 0; k < j; k++) sum -= (factor[i * n + k] as number) * (factor[j * n + k] as number);
      const below = sum / (factor[j * n + j] as number);
      factor[i * n + j] = below;
      pivot -= below * below;
      z -= below * (u[j] as number);
      r -= below * (v[j] as number);
    }
    if (!(pivot > 0)) {
      throw new RangeError(
        `Cannot condition as correlations must be positive definite: pivot ${i} is ${pivot}`,
      );
    }
    const root = Math.sqrt(pivot);
    factor[i * n + i] = root;
    const ui = z / root;
    const vi = r / root;
    u[i] = ui;
    v[i] = vi;
    mean += ui * vi;
    variance -= vi * vi;
    logDensity += Math.log(slope / root) - (ui * ui) / 2;
    squaredDistance += ui * ui;
  }
  return { mean, variance: Math.max(variance, 1e-6), logDensity, squaredDistance };
}
