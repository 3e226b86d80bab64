import studentCumulative from "@stdlib/stats-base-dists-t-cdf";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import { checkValues, type Interval, momentsOf } from "../accuracy/interval.ts";

/** A paired t-test. */
export interface PairedTest {
  /** Mean of first minus second, with its 95 % interval. */
  readonly difference: Interval;
  readonly t: number;
  readonly p: number;
}

export interface PairedErrorComparison {
  readonly n: number;
  /** Of squared percentage errors, %^2: below 0 says that the first is nearer. */
  readonly squared: PairedTest;
  /** Of the sizes of percentage errors, %. */
  readonly absolute: PairedTest;
  /** Pitman-Morgan: whether the SDs of the errors differ, bias aside. */
  readonly spread: { readonly sdRatio: number; readonly t: number; readonly p: number };
}

/**
 * Compares two methods on the same children by the size of their percentage errors: paired t-tests of squares and of sizes, and
 * Pitman-Morgan's test of the spreads.
 *
 * Pitman-Morgan: the correlation of sum and difference of the errors is 0 when the variances are equal.
 *
 * `first`, `second`: percentage errors (estimate minus true, over true), same length, at least 3; a `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { comparePairedErrors } from "@steelyard/study/comparison";
 *
 * const { squared, spread } = comparePairedErrors({ first: [1, -2, 3, -1], second: [4, -8, 9, -5] });
 * assert.ok(squared.difference.value < 0 && spread.sdRatio < 1);
 * ```
 *
 * @source pitman1939
 * @source morgan1939
 */
export function comparePairedErrors({
  first,
  second,
}: {
  readonly first: ArrayLike<number>;
  readonly second: ArrayLike<number>;
}): PairedErrorComparison {
  checkValues("compare paired errors", first, 3);
  checkValues("compare paired errors", second, 3);
  const n = first.length;
  if (second.length !== n)
    throw new RangeError(
      `Cannot compare paired errors as second must be ${n} values: current value is ${second.length}`,
    );
  const pair = (combine: (a: number, b: number) => number): Float64Array =>
    Float64Array.from({ length: n }, (_, i) => combine(first[i] as number, second[i] as number));
  const sums = pair((a, b) => a + b);
  const differences = pair((a, b) => a - b);
  const u = momentsOf(sums);
  const v = momentsOf(differences);
  let product = 0;
  for (let i = 0; i < n; i++)
    product += ((sums[i] as number) - u.mean) * ((differences[i] as number) - v.mean);
  const r = u.squares > 0 && v.squares > 0 ? product / Math.sqrt(u.squares * v.squares) : 0;
  const t = tOf(r * Math.sqrt(n - 2), Math.sqrt(Math.max(0, 1 - r * r)));
  const ownSquares = momentsOf(first).squares;
  const otherSquares = momentsOf(second).squares;
  return {
    n,
    squared: pairedTest(pair((a, b) => a * a - b * b)),
    absolute: pairedTest(pair((a, b) => Math.abs(a) - Math.abs(b))),
    spread: {
      sdRatio: otherSquares > 0 ? Math.sqrt(ownSquares / otherSquares) : 0,
      t,
      p: 2 * studentCumulative(-Math.abs(t), n - 2),
    },
  };
}

function pairedTest(differences: Float64Array): PairedTest {
  const n = differences.length;
  const { mean, squares } = momentsOf(differences);
  const error = Math.sqrt(squares / (n - 1) / n);
  const half = studentQuantile(0.975, n - 1) * error;
  const t = tOf(mean, error);
  return {
    difference: { value: mean, low: mean - half, high: mean + half },
    t,
    p: 2 * studentCumulative(-Math.abs(t), n - 1),
  };
}

/** The ratio, held finite where there is no spread at all. */
function tOf(value: number, error: number): number {
  if (value === 0) return 0;
  return error === 0 ? Math.sign(value) * Number.MAX_SAFE_INTEGER : value / error;
}
