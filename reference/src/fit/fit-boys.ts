import type { SplineBasis } from "@steelyard/core/body";
import { fitSmoothCurves } from "./fit-smooth-curves.ts";

/** Fits the share of boys among children of a length as a smooth curve (logistic regression). */
export function fitBoys(given: {
  basis: SplineBasis;
  x: Float64Array;
  boy: readonly boolean[];
}): readonly number[] {
  const fitted = fitSmoothCurves({
    basis: given.basis,
    x: given.x,
    start: [0],
    order: [1],
    likelihood: (row, predictors, into) => {
      const share = 1 / (1 + Math.exp(-(predictors[0] as number)));
      const boy = given.boy[row] === true;
      into.score[0] = (boy ? 1 : 0) - share;
      into.information[0] = share * (1 - share);
      return Math.log(Math.max(boy ? share : 1 - share, 1e-300));
    },
  });
  return fitted.coefficients[0] as readonly number[];
}
