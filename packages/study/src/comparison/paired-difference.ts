import type { Interval } from "../accuracy/interval.ts";
import { checkCounts, type PairedCounts } from "./paired-counts.ts";
import { scoreInterval } from "./score-interval.ts";

/**
 * Difference of two shares seen in the same children (first minus second, -1 to 1), with Newcombe's paired score interval.
 *
 * Method 10: the square-and-add of the two Wilson intervals with the continuity-corrected correlation phi.
 *
 * `counts`: whole numbers from 0, not all 0; a `RangeError` otherwise. `confidence`: 0.95 when absent.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { pairedDifference } from "@steelyard/study/comparison";
 *
 * const { value, low, high } = pairedDifference({ both: 36, onlyFirst: 12, onlySecond: 2, neither: 0 });
 * assert.deepEqual([value.toFixed(2), low.toFixed(4), high.toFixed(4)], ["0.20", "0.0569", "0.3404"]);
 * ```
 *
 * @source newcombe1998-paired method 10
 */
export function pairedDifference(
  counts: PairedCounts,
  { confidence = 0.95 }: { readonly confidence?: number } = {},
): Interval {
  const n = checkCounts("compare paired shares", counts);
  const { both: a, onlyFirst: b, onlySecond: c, neither: d } = counts;
  const first = (a + b) / n;
  const second = (a + c) / n;
  const own = scoreInterval(a + b, n, confidence);
  const other = scoreInterval(a + c, n, confidence);
  const product = (a + b) * (c + d) * (a + c) * (b + d);
  const raw = a * d - b * c;
  const corrected = raw > n / 2 ? raw - n / 2 : Math.min(raw, 0);
  const phi = product === 0 ? 0 : corrected / Math.sqrt(product);
  const value = (b - c) / n;
  const half = (x: number, y: number): number => Math.sqrt(Math.max(0, x * x - 2 * phi * x * y + y * y));
  return {
    value,
    low: Math.max(-1, value - half(first - own.low, other.high - second)),
    high: Math.min(1, value + half(own.high - first, second - other.low)),
  };
}
