import fQuantile from "@stdlib/stats-base-dists-f-quantile";
import { type Interval, momentsOf } from "../accuracy/interval.ts";
import { checkReadings } from "./check-readings.ts";

/** Mean squares of the two-way table. */
export interface ReadingMeanSquares {
  readonly betweenChildren: number;
  readonly withinChildren: number;
  readonly betweenReaders: number;
  readonly residual: number;
}

/** The six intraclass correlations of Shrout and Fleiss, each with its interval. */
export interface IntraclassCorrelations {
  readonly meanSquares: ReadingMeanSquares;
  /** Each child read by other readers: (1,1), and the mean of k: (1,k). */
  readonly oneWay: { readonly single: Interval; readonly mean: Interval };
  /** Readers drawn from many, absolute agreement: (2,1) and (2,k). */
  readonly twoWayRandom: { readonly single: Interval; readonly mean: Interval };
  /** These readers and no others, consistency: (3,1) and (3,k). */
  readonly twoWayFixed: { readonly single: Interval; readonly mean: Interval };
}

/**
 * All six intraclass correlations of Shrout and Fleiss with 95 % intervals.
 *
 * From mean squares between children B, within W, between readers J, residual E, of n children by k readers: (1,1) = (B - W) / (B +
 * (k - 1) W); (2,1) = (B - E) / (B + (k - 1) E + k (J - E) / n); (3,1) = (B - E) / (B + (k - 1) E); means of k by their counterparts.
 * Intervals: F, for (2,1) with Satterthwaite's degrees of freedom.
 *
 * `readings`: one row per child, one column per reader, complete, finite, at least 2 by 2, with some disagreement and some difference between
 * children; a `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { intraclassCorrelations } from "@steelyard/study/agreement";
 *
 * const table = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
 * assert.equal(intraclassCorrelations(table).twoWayRandom.single.value.toFixed(2), "0.29");
 * ```
 *
 * @source shrout-fleiss-1979
 */
export function intraclassCorrelations(
  readings: readonly (readonly number[])[],
  { confidence = 0.95 }: { readonly confidence?: number } = {},
): IntraclassCorrelations {
  const { children: n, readers: k } = checkReadings("compute intraclass correlations", readings);
  const meanSquares = meanSquaresOf(readings);
  const { betweenChildren: b, withinChildren: w, betweenReaders: j, residual: e } = meanSquares;
  if (!(b > 0 && w > 0 && e > 0))
    throw new RangeError(
      `Cannot compute intraclass correlations as readings must differ between and within children: current value is ${[b, w, e]}`,
    );
  const upper = (1 + confidence) / 2;
  const bounds = (ratio: number, df: number): { low: number; high: number } => ({
    low: ratio / fQuantile(upper, n - 1, df),
    high: ratio * fQuantile(upper, df, n - 1),
  });
  const single = (f: number): number => (f - 1) / (f + k - 1);
  const mean = (f: number): number => 1 - 1 / f;
  const pair = (f: number, df: number): { single: Interval; mean: Interval } => {
    const { low, high } = bounds(f, df);
    return {
      single: { value: single(f), low: single(low), high: single(high) },
      mean: { value: mean(f), low: mean(low), high: mean(high) },
    };
  };
  return {
    meanSquares,
    oneWay: pair(b / w, n * (k - 1)),
    twoWayRandom: twoWayRandom({ b, j, e, n, k, upper }),
    twoWayFixed: pair(b / e, (n - 1) * (k - 1)),
  };
}

function twoWayRandom(given: { b: number; j: number; e: number; n: number; k: number; upper: number }): {
  single: Interval;
  mean: Interval;
} {
  const { b, j, e, n, k, upper } = given;
  const value = (b - e) / (b + (k - 1) * e + (k * (j - e)) / n);
  const ratio = j / e;
  const readers = k * value * ratio;
  const rest = n * (1 + (k - 1) * value) - k * value;
  const df = ((k - 1) * (n - 1) * (readers + rest) ** 2) / ((n - 1) * readers ** 2 + rest ** 2);
  const f = fQuantile(upper, n - 1, df);
  const g = fQuantile(upper, df, n - 1);
  const noise = k * j + (k * n - k - n) * e;
  const low = (n * (b - f * e)) / (f * noise + n * b);
  const high = (n * (g * b - e)) / (noise + n * g * b);
  const ofMean = (icc: number): number => (icc * k) / (1 + icc * (k - 1));
  return {
    single: { value, low, high },
    mean: { value: (b - e) / (b + (j - e) / n), low: ofMean(low), high: ofMean(high) },
  };
}

function meanSquaresOf(readings: readonly (readonly number[])[]): ReadingMeanSquares {
  const n = readings.length;
  const k = (readings[0] as readonly number[]).length;
  const total = momentsOf(readings.flat()).squares;
  const within = readings.reduce((sum, row) => sum + momentsOf(row).squares, 0);
  const readerMeans = Array.from(
    { length: k },
    (_, reader) => readings.reduce((sum, row) => sum + (row[reader] as number), 0) / n,
  );
  const readers = n * momentsOf(readerMeans).squares;
  return {
    betweenChildren: (total - within) / (n - 1),
    withinChildren: within / (n * (k - 1)),
    betweenReaders: readers / (k - 1),
    residual: (within - readers) / ((n - 1) * (k - 1)),
  };
}
