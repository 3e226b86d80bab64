import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { checkValues, type Interval, momentsOf } from "./interval.ts";

/** Lin's concordance with its parts. */
export interface Concordance extends Interval {
  /** Pearson's correlation: how close to a line. */
  readonly precision: number;
  /** How close that line is to equality. */
  readonly accuracy: number;
}

/** The coefficient alone, of two values or more; equality everywhere is 1. */
export function concordanceValue(first: ArrayLike<number>, second: ArrayLike<number>): number {
  const n = first.length;
  const [a, b] = [momentsOf(first), momentsOf(second)];
  const spread = a.squares + b.squares + n * (a.mean - b.mean) ** 2;
  return spread === 0 ? 1 : (2 * productOf({ first, second, a, b })) / spread;
}

type Moments = ReturnType<typeof momentsOf>;

function productOf(given: {
  first: ArrayLike<number>;
  second: ArrayLike<number>;
  a: Moments;
  b: Moments;
}): number {
  const { first, second, a, b } = given;
  let product = 0;
  for (let i = 0; i < first.length; i++)
    product += ((first[i] as number) - a.mean) * ((second[i] as number) - b.mean);
  return product;
}

/**
 * Lin's concordance correlation of two methods, -1 to 1, with a 95 % interval through Fisher's z.
 *
 * 2 s12 / (s1^2 + s2^2 + (m1 - m2)^2) with divisor n; variance as corrected in the paper's erratum of 2000.
 *
 * `first`, `second`: same length, at least 3, neither constant; a `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { concordance } from "@steelyard/study/accuracy";
 *
 * const { value } = concordance({ first: [10, 12, 15, 20], second: [11, 12, 14, 21] });
 * assert.equal(value.toFixed(4), "0.9746");
 * ```
 *
 * @source lin1989
 */
export function concordance({
  first,
  second,
  confidence = 0.95,
}: {
  readonly first: ArrayLike<number>;
  readonly second: ArrayLike<number>;
  readonly confidence?: number;
}): Concordance {
  checkValues("compute concordance", first, 3);
  checkValues("compute concordance", second, 3);
  const n = first.length;
  if (second.length !== n)
    throw new RangeError(
      `Cannot compute concordance as second must be ${n} values: current value is ${second.length}`,
    );
  const a = momentsOf(first);
  const b = momentsOf(second);
  if (a.squares === 0 || b.squares === 0)
    throw new RangeError(
      `Cannot compute concordance as values must differ: current value is ${a.squares === 0 ? first[0] : second[0]}`,
    );
  const product = productOf({ first, second, a, b });
  const shift = (a.mean - b.mean) ** 2;
  const value = concordanceValue(first, second);
  const r = product / Math.sqrt(a.squares * b.squares);
  // u^2 of the paper: shift relative to the product of the SDs.
  const u2 = (n * shift) / Math.sqrt(a.squares * b.squares);
  const parts = { value, precision: r, accuracy: r === 0 ? 0 : value / r };
  const rest = 1 - value * value;
  if (rest < 1e-14 || Math.abs(r) < 1e-12)
    return { ...parts, low: r === 0 ? -1 : value, high: r === 0 ? 1 : value };
  const variance =
    (((1 - r * r) * value ** 2) / (rest * r * r) +
      (2 * value ** 3 * (1 - value) * u2) / (r * rest ** 2) -
      (value ** 4 * u2 ** 2) / (2 * r * r * rest ** 2)) /
    Math.max(n - 2, 1);
  const half = normalQuantile((1 + confidence) / 2, 0, 1) * Math.sqrt(Math.max(0, variance));
  const z = Math.atanh(value);
  return { ...parts, low: Math.tanh(z - half), high: Math.tanh(z + half) };
}
