import type { BodyAt } from "./body-model.ts";
import type { Quantity, Residual } from "./body-reference.ts";
import { boxCoxSlope, boxCoxZ, straightFrom } from "./box-cox.ts";

/** A measured quantity, other than length and sex: ln of its value, in the unit of the model. */
export interface Observation {
  readonly quantity: Quantity;
  readonly logValue: number;
}

/** The weight z-score of one sex given the observations. */
export interface ConditionedWeight {
  readonly zMean: number;
  readonly zScale: number;
  /** Degrees of freedom of Student's t; absent: normal. */
  readonly tailDf?: number;
  /** ln density of the observations themselves, up to a constant that both sexes share. */
  readonly logDensity: number;
}

/**
 * Conditions the joint normal of z-scores on any number of observations.
 *
 * With R the correlations of the observed z-scores and r those with weight: mean = r R^-1 z and variance = 1 - r R^-1 r.
 * What is left after the observations is an error in proportion to the child's weight, while one unit of z means more
 * kilograms the heavier the child; so the spread follows (1 + lambda S mean)^power, the local slope of the
 * weight curve, with the power estimated by the fit (0 would be the plain joint normal). Its tails are those of a Student's
 * t, since now and then a tape is misread. With no observation the weight is normal in z, as its curve was fitted.
 *
 * Throws a `RangeError` when the correlations are not positive definite, which the fit rules out.
 */
export function conditionWeight({
  at,
  observations,
  residual,
}: {
  at: BodyAt;
  observations: readonly Observation[];
  residual: Residual;
}): ConditionedWeight {
  const n = observations.length;
  const weight = at.curve("weight");
  if (n === 0) return { zMean: 0, zScale: 1, logDensity: 0 };
  // Cholesky factor of R, with z and r carried through it: L u = z and L v = r.
  const factor: number[] = [];
  const u: number[] = [];
  const v: number[] = [];
  let logDensity = 0;
  for (let i = 0; i < n; i++) {
    const observation = observations[i] as Observation;
    const curve = at.curve(observation.quantity);
    let pivot = 1;
    let z = boxCoxZ(curve, observation.logValue);
    let r = at.correlation("weight", observation.quantity);
    for (let j = 0; j < i; j++) {
      let sum = at.correlation(observation.quantity, (observations[j] as Observation).quantity);
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
    u[i] = z / root;
    v[i] = r / root;
    logDensity +=
      Math.log(boxCoxSlope(curve, observation.logValue) / root) - ((u[i] as number) * (u[i] as number)) / 2;
  }
  let zMean = 0;
  let variance = 1;
  for (let i = 0; i < n; i++) {
    zMean += (u[i] as number) * (v[i] as number);
    variance -= (v[i] as number) * (v[i] as number);
  }
  const slope = Math.max(1 + weight.lambda * weight.sigma * zMean, straightFrom);
  return {
    zMean,
    zScale: Math.sqrt(Math.max(variance, 1e-6)) * residual.scale * slope ** residual.spreadPower,
    tailDf: residual.tailDf,
    logDensity,
  };
}
