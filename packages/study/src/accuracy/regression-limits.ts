import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import studentCumulative from "@stdlib/stats-base-dists-t-cdf";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import { checkValues, type Interval, momentsOf } from "./interval.ts";

/** A straight line fitted by least squares. */
export interface FittedLine {
  readonly intercept: Interval;
  readonly slope: Interval;
  /** Two-sided p of slope 0. */
  readonly p: number;
}

/** Limits of agreement that move with the size of what is measured. */
export interface RegressionLimits {
  readonly n: number;
  /** Difference on size: a slope other than 0 is proportional bias. */
  readonly bias: FittedLine;
  /** Size of the residual on size: a slope other than 0 is a spread that grows. */
  readonly spread: FittedLine;
  /** Bias and limits at a size. */
  readonly at: (size: number) => { readonly bias: number; readonly lower: number; readonly upper: number };
}

/**
 * Proportional bias and regression-based limits of agreement.
 *
 * The difference D is regressed on the size A, then |residual| on A: SD(A) = sqrt(pi / 2) (c0 + c1 A), never below 0, and the limits are
 * b0 + b1 A -/+ 1.96 SD(A). Sizes are the means of both methods, or the true value where one method is the standard.
 *
 * `differences`, `sizes`: same length, at least 4, sizes not all equal; a `RangeError` otherwise. Units are those handed over.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { regressionLimits } from "@steelyard/study/accuracy";
 *
 * const { bias } = regressionLimits({ differences: [1, 2.1, 2.9, 4], sizes: [10, 20, 30, 40] });
 * assert.equal(bias.slope.value.toFixed(3), "0.098");
 * ```
 *
 * @source bland-altman-1999 section 3.2
 */
export function regressionLimits({
  differences,
  sizes,
}: {
  readonly differences: ArrayLike<number>;
  readonly sizes: ArrayLike<number>;
}): RegressionLimits {
  checkValues("fit regression limits", differences, 4);
  checkValues("fit regression limits", sizes, 4);
  if (differences.length !== sizes.length)
    throw new RangeError(
      `Cannot fit regression limits as sizes must be ${differences.length} values: current value is ${sizes.length}`,
    );
  const bias = fitLine(sizes, differences);
  const residuals = Float64Array.from(differences, (difference, i) =>
    Math.abs(difference - bias.intercept.value - bias.slope.value * (sizes[i] as number)),
  );
  const spread = fitLine(sizes, residuals);
  const z = normalQuantile(0.975, 0, 1);
  return {
    n: differences.length,
    bias,
    spread,
    at: (size) => {
      const middle = bias.intercept.value + bias.slope.value * size;
      const half =
        z * Math.sqrt(Math.PI / 2) * Math.max(0, spread.intercept.value + spread.slope.value * size);
      return { bias: middle, lower: middle - half, upper: middle + half };
    },
  };
}

function fitLine(x: ArrayLike<number>, y: ArrayLike<number>): FittedLine {
  const n = x.length;
  const { mean: meanX, squares: xx } = momentsOf(x);
  const { mean: meanY } = momentsOf(y);
  if (xx === 0)
    throw new RangeError(
      `Cannot fit regression limits as sizes must not all be equal: current value is ${x[0]}`,
    );
  const slope = slopeOf(x, y);
  const intercept = meanY - slope * meanX;
  let rest = 0;
  for (let i = 0; i < n; i++) rest += ((y[i] as number) - intercept - slope * (x[i] as number)) ** 2;
  const variance = rest / (n - 2);
  const slopeError = Math.sqrt(variance / xx);
  const interceptError = Math.sqrt(variance * (1 / n + meanX ** 2 / xx));
  const t = studentQuantile(0.975, n - 2);
  const around = (value: number, error: number): Interval => ({
    value,
    low: value - t * error,
    high: value + t * error,
  });
  const p =
    slopeError === 0 ? Number(slope === 0) : 2 * studentCumulative(-Math.abs(slope / slopeError), n - 2);
  return { intercept: around(intercept, interceptError), slope: around(slope, slopeError), p };
}

/** Least-squares slope of y on x, 0 where all x are equal. */
export function slopeOf(x: ArrayLike<number>, y: ArrayLike<number>): number {
  const { mean: meanX, squares: xx } = momentsOf(x);
  const { mean: meanY } = momentsOf(y);
  let xy = 0;
  for (let i = 0; i < x.length; i++) xy += ((x[i] as number) - meanX) * ((y[i] as number) - meanY);
  return xx === 0 ? 0 : xy / xx;
}
