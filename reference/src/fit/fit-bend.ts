import { bendTerms, type SplineBasis } from "@steelyard/core/body";
import { fitSmoothCurves } from "./fit-smooth-curves.ts";

/** Degrees of freedom of the t that keeps single slips from bending the line. */
const robustDf = 6;

/**
 * Fits what the straight line of the joint normal misses: the standardised residual of weight as a cubic in the expected z, its four
 * coefficients smooth in the index. Robust least squares (Student's t).
 */
export function fitBend(given: {
  basis: SplineBasis;
  x: Float64Array;
  /** Expected z of weight, and (z of weight - expected) in units of the spread. */
  expectedZ: Float64Array;
  residual: Float64Array;
  /** What one unit of bend does to that residual. */
  gain: Float64Array;
  weights: Float64Array;
}): readonly (readonly number[])[] {
  const { basis, x, expectedZ, residual, gain, weights } = given;
  const fitted = fitSmoothCurves({
    basis,
    x,
    weights,
    start: [0, 0, 0, 0],
    order: [1, 1, 1, 1],
    likelihood: (row, predictors, into) => {
      const terms = bendTerms(expectedZ[row] as number).map((term) => term * (gain[row] as number));
      let bend = 0;
      terms.forEach((term, i) => {
        bend += term * (predictors[i] as number);
      });
      const t = (residual[row] as number) - bend;
      const weight = (robustDf + 1) / (robustDf + t * t);
      terms.forEach((term, i) => {
        into.score[i] = weight * t * term;
        terms.forEach((other, j) => {
          into.information[i * terms.length + j] = ((robustDf + 1) / (robustDf + 3)) * term * other;
        });
      });
      return (-(robustDf + 1) / 2) * Math.log1p((t * t) / robustDf);
    },
  });
  return fitted.coefficients;
}
