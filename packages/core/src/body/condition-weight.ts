import type { Residual } from "./body-reference.ts";
import { type BoxCox, straightFrom } from "./box-cox.ts";
import type { ObservedNormal } from "./observed-normal.ts";

/** The weight's z-score of one sex given the observations. */
export interface ConditionedWeight {
  /** The weight's curve at this length and sex. */
  readonly curve: BoxCox;
  readonly zMean: number;
  readonly zScale: number;
  /** Degrees of freedom of Student's t; undefined: normal. */
  readonly tailDf: number | undefined;
  readonly logDensity: number;
}

/**
 * The weight's z-score given any number of observations.
 *
 * What is left after the observations is an error in proportion to the child's weight, while one unit of z means more
 * kilograms the heavier the child; so the spread follows (1 + lambda S mean)^power, the local slope of the
 * weight curve, with the power estimated by the fit (0 would be the plain joint normal). The mean is bent by what the straight line
 * misses in the thin and the heaviest, as far as something is known (nothing is, with a variance of 1) and not all (0). The tails are those of a Student's
 * t, since now and then a tape is misread. With no observation the weight is normal in z, as its curve was fitted.
 */
export function conditionWeight(normal: ObservedNormal, residual: Residual): ConditionedWeight {
  const { at, observations, logDensity } = normal;
  const curve = at.curve("weight");
  if (observations.length === 0) return { curve, zMean: 0, zScale: 1, tailDf: undefined, logDensity: 0 };
  const { mean, variance } = normal.condition("weight");
  const { lambda, sigma } = curve;
  const slope = Math.max(1 + lambda * sigma * mean, straightFrom);
  const zScale = Math.sqrt(variance) * residual.scale * slope ** residual.spreadPower;
  return {
    curve,
    zMean: mean + variance * (1 - variance) * at.bend(mean),
    zScale,
    tailDf: residual.tailDf,
    logDensity,
  };
}
