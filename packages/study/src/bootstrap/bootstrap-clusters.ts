import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { createGenerator } from "./create-generator.ts";

/** A figure computed from sums over all clusters. */
export type SumStatistic = (sums: Float64Array) => number;

export interface BootstrapInput {
  /** One column per sum, one entry per cluster (a child seen once is a cluster of one). */
  readonly columns: readonly Float64Array[];
  readonly statistics: readonly SumStatistic[];
  readonly seed: number;
  /** 2,000 when absent. */
  readonly replicates?: number;
  /** 0.95 when absent. */
  readonly confidence?: number;
  /** Told now and then, 0 to 1; false stops, and `undefined` is returned. */
  readonly onProgress?: (share: number) => boolean | undefined;
}

export interface BootstrapInterval {
  readonly value: number;
  readonly standardError: number;
  readonly percentile: { readonly low: number; readonly high: number };
  /** Bias-corrected and accelerated. */
  readonly bca: { readonly low: number; readonly high: number };
}

/**
 * Intervals of any figures that are functions of sums, by resampling whole clusters with replacement: percentile and BCa.
 *
 * Clusters, not rows, are drawn, so repeat visits and sites keep their dependence; a replicate adds the sums of the drawn clusters. The
 * acceleration of BCa comes from leaving each cluster out in turn.
 *
 * `columns`: at least one, all of the same length of at least 2. A statistic that is not finite in a replicate leaves that replicate out
 * of its quantiles. Throws `RangeError` on other shapes, or when a statistic of all clusters is not finite.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { bootstrapClusters } from "@steelyard/study/bootstrap";
 *
 * const columns = [Float64Array.of(1, 1, 1, 1), Float64Array.of(2, 4, 6, 8)];
 * const [mean] = bootstrapClusters({ columns, statistics: [([n = 0, sum = 0]) => sum / n], seed: 1 }) ?? [];
 * assert.ok(mean !== undefined && mean.value === 5 && mean.percentile.low >= 2 && mean.percentile.high <= 8);
 * ```
 *
 * @source efron-tibshirani-1993
 */
export function bootstrapClusters({
  columns,
  statistics,
  seed,
  replicates = 2000,
  confidence = 0.95,
  onProgress,
}: BootstrapInput): readonly BootstrapInterval[] | undefined {
  const clusters = columns[0]?.length ?? 0;
  if (clusters < 2 || columns.some(({ length }) => length !== clusters))
    throw new RangeError(
      `Cannot bootstrap as columns must share a length of at least 2: current value is ${clusters}`,
    );
  const width = columns.length;
  const sums = interleave(columns);
  const total = new Float64Array(width);
  for (let i = 0; i < sums.length; i++) total[i % width] = (total[i % width] as number) + (sums[i] as number);
  const values = statistics.map((statistic) => statistic(total));
  if (!values.every(Number.isFinite))
    throw new RangeError(`Cannot bootstrap as statistics must be finite: current value is ${values}`);
  const draws = statistics.map(() => new Float64Array(replicates));
  const { next32 } = createGenerator(seed);
  const scale = clusters / 4294967296;
  const replicate = new Float64Array(width);
  for (let r = 0; r < replicates; r++) {
    if (r % 256 === 0 && onProgress?.(r / replicates) === false) return undefined;
    replicate.fill(0);
    for (let i = 0; i < clusters; i++) {
      const base = Math.floor(next32() * scale) * width;
      for (let j = 0; j < width; j++) replicate[j] = (replicate[j] as number) + (sums[base + j] as number);
    }
    for (const [s, statistic] of statistics.entries()) (draws[s] as Float64Array)[r] = statistic(replicate);
  }
  return statistics.map((statistic, s) =>
    intervalOf({
      value: values[s] as number,
      draws: (draws[s] as Float64Array).filter(Number.isFinite).sort(),
      acceleration: accelerationOf({ sums, total, width, statistic }),
      confidence,
    }),
  );
}

function interleave(columns: readonly Float64Array[]): Float64Array {
  const width = columns.length;
  const rows = columns[0]?.length ?? 0;
  const sums = new Float64Array(width * rows);
  for (const [j, column] of columns.entries())
    for (let i = 0; i < rows; i++) sums[i * width + j] = column[i] as number;
  return sums;
}

function accelerationOf(given: {
  sums: Float64Array;
  total: Float64Array;
  width: number;
  statistic: SumStatistic;
}): number {
  const { sums, total, width, statistic } = given;
  const clusters = sums.length / width;
  const without = new Float64Array(width);
  const left = new Float64Array(clusters);
  for (let i = 0; i < clusters; i++) {
    for (let j = 0; j < width; j++) without[j] = (total[j] as number) - (sums[i * width + j] as number);
    left[i] = statistic(without);
  }
  const finite = left.filter(Number.isFinite);
  const mean = finite.reduce((sum, value) => sum + value, 0) / finite.length;
  let [squares, cubes] = [0, 0];
  for (const value of finite) {
    squares += (mean - value) ** 2;
    cubes += (mean - value) ** 3;
  }
  return squares > 0 ? cubes / (6 * squares ** 1.5) : 0;
}

function intervalOf(given: {
  value: number;
  draws: Float64Array;
  acceleration: number;
  confidence: number;
}): BootstrapInterval {
  const { value, draws, acceleration, confidence } = given;
  const tails = [(1 - confidence) / 2, (1 + confidence) / 2] as const;
  let [below, equal, sum, squares] = [0, 0, 0, 0];
  for (const draw of draws) {
    if (draw < value) below++;
    else if (draw === value) equal++;
    sum += draw - value;
    squares += (draw - value) ** 2;
  }
  const n = draws.length;
  // Half of the ties count as below: figures such as shares take few values.
  const bias = normalQuantile(Math.min(Math.max((below + equal / 2) / n, 0.5 / n), 1 - 0.5 / n), 0, 1);
  const adjusted = (tail: number): number => {
    const z = bias + normalQuantile(tail, 0, 1);
    return normalCumulative(bias + z / (1 - acceleration * z), 0, 1);
  };
  const at = (tail: number): number => quantileOf(draws, tail);
  return {
    value,
    standardError: n > 1 ? Math.sqrt(Math.max(0, squares - (sum * sum) / n) / (n - 1)) : 0,
    percentile: { low: at(tails[0]), high: at(tails[1]) },
    bca: { low: at(adjusted(tails[0])), high: at(adjusted(tails[1])) },
  };
}

/** Between the order statistics, as R's type 7. */
function quantileOf(sorted: Float64Array, p: number): number {
  const place = (sorted.length - 1) * p;
  const low = Math.floor(place);
  const from = sorted[low] as number;
  return from + (place - low) * ((sorted[Math.min(low + 1, sorted.length - 1)] as number) - from);
}
