/** Children judged by two methods: within the limit by both, by one, by neither. */
export interface PairedCounts {
  readonly both: number;
  readonly onlyFirst: number;
  readonly onlySecond: number;
  readonly neither: number;
}

/** Counts must be whole and not negative, and hold someone. */
export function checkCounts(action: string, counts: PairedCounts): number {
  const values = [counts.both, counts.onlyFirst, counts.onlySecond, counts.neither];
  if (!values.every((value) => Number.isInteger(value) && value >= 0))
    throw new RangeError(
      `Cannot ${action} as counts must be whole numbers from 0: current value is ${values}`,
    );
  const n = values.reduce((sum, value) => sum + value, 0);
  if (n === 0) throw new RangeError(`Cannot ${action} as there must be children: current value is 0`);
  return n;
}

/**
 * Counts the children whom two methods estimate within a percentage of the true weight.
 *
 * `firstKg`, `secondKg`, `trueKg`: same length, kg; a row where any is not a positive number is left out, so both methods are judged on the
 * same children. `percent`: 10 for PW10. A boundary is inside.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { countPairs } from "@steelyard/study/comparison";
 *
 * const trueKg = Float64Array.of(10, 10, 10);
 * const counts = countPairs({ firstKg: Float64Array.of(11, 11, 14), secondKg: Float64Array.of(10, 12, 13), trueKg, percent: 10 });
 * assert.deepEqual(counts, { both: 1, onlyFirst: 1, onlySecond: 0, neither: 1 });
 * ```
 */
export function countPairs({
  firstKg,
  secondKg,
  trueKg,
  percent,
}: {
  readonly firstKg: Float64Array;
  readonly secondKg: Float64Array;
  readonly trueKg: Float64Array;
  readonly percent: number;
}): PairedCounts {
  const counts = [0, 0, 0, 0];
  for (let i = 0; i < trueKg.length; i++) {
    const weight = trueKg[i] as number;
    const first = firstKg[i] as number;
    const second = secondKg[i] as number;
    if (!(weight > 0 && first > 0 && second > 0)) continue;
    const misses = (estimate: number): number =>
      (100 * Math.abs(estimate - weight)) / weight - 1e-9 <= percent ? 0 : 1;
    const cell = 2 * misses(first) + misses(second);
    counts[cell] = (counts[cell] as number) + 1;
  }
  const [both = 0, onlyFirst = 0, onlySecond = 0, neither = 0] = counts;
  return { both, onlyFirst, onlySecond, neither };
}
