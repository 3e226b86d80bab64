import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import { chiSquaredQuantile } from "../distributions/chi-squared-quantile.ts";
import { checkValues, type Interval, momentsOf } from "./interval.ts";

/** Limits of agreement of differences: 95 % of them are expected between `lower` and `upper`. */
export interface LimitsOfAgreement {
  readonly n: number;
  readonly bias: Interval;
  /** n - 1; interval from the chi-squared distribution. */
  readonly sd: Interval;
  /** Each limit with its interval by recovering variances from those of mean and SD (MOVER). */
  readonly lower: Interval;
  readonly upper: Interval;
  /** The same limits with the symmetric interval of Bland and Altman 1999: SE = SD sqrt(1/n + z^2 / (2 (n - 1))). */
  readonly approximate: { readonly lower: Interval; readonly upper: Interval };
}

export interface LimitsOptions {
  /** Confidence of every interval; 0.95 when absent. */
  readonly confidence?: number;
  /** SDs from the bias to a limit; 1.959964 when absent (the paper of 1986 used 2). */
  readonly multiplier?: number;
}

/**
 * Bland-Altman bias and limits of agreement of differences, in the unit of the differences, with two kinds of interval.
 *
 * limits = mean -/+ 1.96 SD. Hand over kg for the absolute version, per cent for the relative one, logarithms of ratios for the log
 * version (then take the exponential of everything). Differences must be independent: for repeat visits see `repeatedLimits` and
 * `bootstrapClusters`.
 *
 * `differences`: at least 2 finite values, otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { limitsOfAgreement } from "@steelyard/study/accuracy";
 *
 * const { bias, upper } = limitsOfAgreement([-1, 0, 1, 2, 3]);
 * assert.equal(bias.value, 1);
 * assert.equal(upper.value.toFixed(3), "4.099");
 * ```
 *
 * @source bland-altman-1986
 * @source bland-altman-1999
 * @source zou2013
 */
export function limitsOfAgreement(
  differences: ArrayLike<number>,
  { confidence = 0.95, multiplier = normalQuantile(0.975, 0, 1) }: LimitsOptions = {},
): LimitsOfAgreement {
  checkValues("compute limits of agreement", differences, 2);
  const n = differences.length;
  const { mean, squares } = momentsOf(differences);
  const sd = Math.sqrt(squares / (n - 1));
  const tail = (1 - confidence) / 2;
  const t = studentQuantile(1 - tail, n - 1);
  const around = (value: number, half: number): Interval => ({
    value,
    low: value - half,
    high: value + half,
  });
  const sdLow = sd * Math.sqrt((n - 1) / chiSquaredQuantile(1 - tail, n - 1));
  const sdHigh = sd * Math.sqrt((n - 1) / chiSquaredQuantile(tail, n - 1));
  const meanHalf = (t * sd) / Math.sqrt(n);
  const inner = Math.hypot(meanHalf, multiplier * (sd - sdLow));
  const outer = Math.hypot(meanHalf, multiplier * (sdHigh - sd));
  const lower = mean - multiplier * sd;
  const upper = mean + multiplier * sd;
  const approximate = t * sd * Math.sqrt(1 / n + multiplier ** 2 / (2 * (n - 1)));
  return {
    n,
    bias: around(mean, meanHalf),
    sd: { value: sd, low: sdLow, high: sdHigh },
    lower: { value: lower, low: lower - outer, high: lower + inner },
    upper: { value: upper, low: upper - inner, high: upper + outer },
    approximate: { lower: around(lower, approximate), upper: around(upper, approximate) },
  };
}
