import type { SplineBasis } from "@steelyard/core/body";
import { fitSmoothCurves, type SmoothCurves } from "./fit-smooth-curves.ts";

/**
 * Fits Box-Cox-normal (LMS) curves of a positive quantity on x: ln M, ln S and lambda as smooth curves.
 *
 * z = ((y/M)^lambda - 1) / (lambda S) is standard normal. Scores and expected information as in Cole and Green.
 *
 * @source cole1992
 */
export function fitBoxCoxCurves({
  basis,
  x,
  y,
  weights,
}: {
  basis: SplineBasis;
  x: Float64Array;
  y: Float64Array;
  /** How much each row counts; 1 when absent. */
  weights?: Float64Array;
}): SmoothCurves {
  const logY = y.map((value) => Math.log(value));
  const start = fitMeanCurve({ basis, x, y: logY });
  return fitSmoothCurves({
    basis,
    x,
    ...(weights === undefined ? {} : { weights }),
    start: [start, Math.log(0.15), 0],
    // The median goes on as a power law of length beyond the data; its spread and skewness stay as they are.
    order: [2, 1, 1],
    likelihood: (row, predictors, into) => {
      const logMedian = predictors[0] as number;
      const sigma = Math.exp(Math.min(Math.max(predictors[1] as number, -6), 2));
      const lambda = predictors[2] as number;
      const logRatio = (logY[row] as number) - logMedian;
      const z =
        Math.abs(lambda * logRatio) < 1e-8
          ? logRatio / sigma
          : Math.expm1(lambda * logRatio) / (lambda * sigma);
      const excess = z * z - 1;
      into.score[0] = z / sigma + lambda * excess;
      into.score[1] = excess;
      into.score[2] =
        -logRatio * excess +
        (Math.abs(lambda) < 1e-6
          ? (z * logRatio * logRatio) / (2 * sigma)
          : (z / lambda) * (z - logRatio / sigma));
      // The published information is an expansion for small lambda S and stops being positive definite at 0.83;
      // it only sets the direction of a step, so it may be held inside that.
      const skew = Math.min(Math.max(lambda * sigma, -0.6), 0.6);
      const s2 = sigma * sigma;
      into.information[0] = (1 + 2 * skew * skew) / s2;
      into.information[4] = 2;
      into.information[8] = (7 * s2) / 4;
      into.information[1] = into.information[3] = (2 * skew) / sigma;
      into.information[2] = into.information[6] = -0.5;
      into.information[5] = into.information[7] = skew * sigma;
      return lambda * logRatio - Math.log(sigma) - (z * z) / 2;
    },
  });
}

/** Least squares on the same basis: near enough to begin from, where a constant would send the first step astray. */
function fitMeanCurve({
  basis,
  x,
  y,
}: {
  basis: SplineBasis;
  x: Float64Array;
  y: Float64Array;
}): readonly number[] {
  const information = 1 / 0.15 ** 2;
  const fitted = fitSmoothCurves({
    basis,
    x,
    start: [y.reduce((sum, value) => sum + value, 0) / y.length],
    order: [2],
    likelihood: (row, predictors, into) => {
      const residual = (y[row] as number) - (predictors[0] as number);
      into.score[0] = residual * information;
      into.information[0] = information;
      return (-residual * residual * information) / 2;
    },
  });
  return fitted.coefficients[0] as readonly number[];
}
