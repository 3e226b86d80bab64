import type { SumStatistic } from "./bootstrap-clusters.ts";

/** What each cluster adds up: children, percentage errors, their squares and sizes, and counts within limits. */
export const clusterSums: readonly string[] = [
  "children",
  "error",
  "squaredError",
  "absoluteError",
  "within10",
  "within20",
  "within30",
  "over20",
  "under20",
];

/** The figures of accuracy that are functions of those sums, all in per cent. */
export type AccuracyFigure =
  | "meanPercent"
  | "sdPercent"
  | "rmspe"
  | "mape"
  | "within10"
  | "within20"
  | "within30"
  | "over20"
  | "under20"
  | "lowerLimit"
  | "upperLimit";

/** Mean over children of the sum at a place of `clusterSums`. */
const mean =
  (place: number, factor = 1): SumStatistic =>
  (sums) =>
    (factor * (sums[place] as number)) / (sums[0] as number);

/** SD of the percentage error, n - 1. */
const sd: SumStatistic = (sums) => {
  const [n, error, squares] = sums as unknown as [number, number, number];
  return Math.sqrt(Math.max(0, squares - (error * error) / n) / (n - 1));
};

const Z = 1.959963984540054;

/** Figures of accuracy as functions of sums, in per cent: what `bootstrapClusters` takes with the columns of `clusterColumns`. */
export const accuracyStatistics: Readonly<Record<AccuracyFigure, SumStatistic>> = {
  meanPercent: mean(1),
  sdPercent: sd,
  rmspe: (sums) => Math.sqrt(mean(2)(sums)),
  mape: mean(3),
  within10: mean(4, 100),
  within20: mean(5, 100),
  within30: mean(6, 100),
  over20: mean(7, 100),
  under20: mean(8, 100),
  lowerLimit: (sums) => mean(1)(sums) - Z * sd(sums),
  upperLimit: (sums) => mean(1)(sums) + Z * sd(sums),
};

/**
 * Sums of percentage errors (estimate minus true, over true) by cluster, one column per name of `clusterSums`.
 *
 * `estimateKg`, `trueKg`: same length, kg, true weights positive; a row where either is not a positive number is left out.
 * `cluster`: code of each row's cluster (child or site), any whole numbers from 0; absent: each row is its own. Clusters without a row are
 * dropped, so the columns are as long as there are clusters with children. A boundary is inside: 11 kg for 10 kg is within 10 %.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { clusterColumns } from "@steelyard/study/bootstrap";
 *
 * const [children] = clusterColumns({
 *   estimateKg: Float64Array.of(9, 10, 11),
 *   trueKg: Float64Array.of(10, 10, 10),
 *   cluster: Int32Array.of(0, 0, 4),
 * });
 * assert.deepEqual(children, Float64Array.of(2, 1));
 * ```
 */
export function clusterColumns({
  estimateKg,
  trueKg,
  cluster,
}: {
  readonly estimateKg: Float64Array;
  readonly trueKg: Float64Array;
  readonly cluster?: Int32Array;
}): readonly Float64Array[] {
  let clusters = cluster === undefined ? trueKg.length : 0;
  if (cluster !== undefined) for (const code of cluster) clusters = Math.max(clusters, code + 1);
  const columns = clusterSums.map(() => new Float64Array(clusters));
  const own = new Float64Array(clusterSums.length);
  for (let row = 0; row < trueKg.length; row++) {
    const weight = trueKg[row] as number;
    const estimate = estimateKg[row] as number;
    const code = cluster === undefined ? row : (cluster[row] as number);
    if (!(weight > 0 && estimate > 0) || code < 0) continue;
    const error = (100 * (estimate - weight)) / weight;
    const size = Math.abs(error) - 1e-9;
    own[0] = 1;
    own[1] = error;
    own[2] = error * error;
    own[3] = Math.abs(error);
    own[4] = size <= 10 ? 1 : 0;
    own[5] = size <= 20 ? 1 : 0;
    own[6] = size <= 30 ? 1 : 0;
    own[7] = size > 20 && error > 0 ? 1 : 0;
    own[8] = size > 20 && error < 0 ? 1 : 0;
    for (const [j, column] of columns.entries()) column[code] = (column[code] as number) + (own[j] as number);
  }
  const [children] = columns as [Float64Array];
  return columns.map((column) => column.filter((_, i) => (children[i] as number) > 0));
}
