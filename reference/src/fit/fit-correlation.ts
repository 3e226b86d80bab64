import type { SplineBasis } from "@steelyard/core/body";
import { fitSmoothCurves, type SmoothCurves } from "./fit-smooth-curves.ts";

/** Share of pairs taken to be slips: of two measurements that then have nothing to do with each other. */
const slipShare = 0.01;

/**
 * Fits the correlation of two z-scores as a smooth curve of x, on the scale atanh(rho).
 *
 * Maximum likelihood of the bivariate standard normal, with one pair in a hundred free to be a slip (two independent
 * z-scores), so that a handful of misread tapes does not loosen the correlation of all. The expected information of
 * atanh(rho) is 1 + rho^2.
 *
 * @source fisher1915
 */
export function fitCorrelation(given: {
  basis: SplineBasis;
  x: Float64Array;
  first: Float64Array;
  second: Float64Array;
  /** How much each row counts; 1 when absent. */
  weights?: Float64Array;
}): SmoothCurves {
  const { basis, x, first, second, weights } = given;
  return fitSmoothCurves({
    basis,
    x,
    ...(weights === undefined ? {} : { weights }),
    start: [0.8],
    order: [1],
    likelihood: (row, predictors, into) => {
      const rho = Math.tanh(predictors[0] as number);
      const a = first[row] as number;
      const b = second[row] as number;
      const rest = 1 - rho * rho;
      const logPair =
        -Math.log(rest) / 2 - (a * a - 2 * rho * a * b + b * b) / (2 * rest) + (a * a + b * b) / 2;
      const genuine = 1 / (1 + (slipShare / (1 - slipShare)) * Math.exp(-logPair));
      into.score[0] = (genuine * (rho * rest + (1 + rho * rho) * a * b - rho * (a * a + b * b))) / rest;
      into.information[0] = 1 + rho * rho;
      return Math.log((1 - slipShare) * Math.exp(logPair) + slipShare);
    },
  });
}
