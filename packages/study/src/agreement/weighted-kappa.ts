import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/** Agreement beyond chance. */
export interface Kappa {
  readonly n: number;
  /** Weighted shares: seen, and by chance. */
  readonly observed: number;
  readonly expected: number;
  readonly kappa: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Cohen's kappa of two readers' classes, unweighted or weighted, with a large-sample 95 % interval.
 *
 * kappa = (po - pe) / (1 - pe) with weights 1 - |i - j| / (classes - 1) (linear) or 1 - ((i - j) / (classes - 1))^2 (quadratic); variance
 * by Fleiss, Cohen and Everitt.
 *
 * `counts`: square, row = class by the first reader, column = by the second, in the order of the classes; whole numbers from 0, not all in
 * one class; a `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { weightedKappa } from "@steelyard/study/agreement";
 *
 * const { kappa } = weightedKappa([[88, 14, 18], [10, 40, 10], [2, 6, 12]], "none");
 * assert.equal(kappa.toFixed(4), "0.4915");
 * ```
 *
 * @source cohen1960
 * @source cohen1968
 * @source fleiss-cohen-everitt-1969
 */
export function weightedKappa(
  counts: readonly (readonly number[])[],
  weighting: "none" | "linear" | "quadratic",
  { confidence = 0.95 }: { readonly confidence?: number } = {},
): Kappa {
  const classes = counts.length;
  const n = counts.flat().reduce((sum, count) => sum + count, 0);
  if (classes < 2 || counts.some((row) => row.length !== classes))
    throw new RangeError(
      `Cannot compute kappa as counts must be square with at least 2 classes: current value is ${classes}`,
    );
  if (!counts.flat().every((count) => Number.isInteger(count) && count >= 0))
    throw new RangeError(
      `Cannot compute kappa as counts must be whole numbers from 0: current value is ${counts}`,
    );
  const weight = (i: number, j: number): number => {
    const distance = Math.abs(i - j) / (classes - 1);
    if (weighting === "none") return i === j ? 1 : 0;
    return weighting === "linear" ? 1 - distance : 1 - distance * distance;
  };
  const rows = counts.map((row) => row.reduce((sum, count) => sum + count, 0) / n);
  const columns = counts.map((_, j) => counts.reduce((sum, row) => sum + (row[j] as number), 0) / n);
  const rowWeights = rows.map((_, i) => columns.reduce((sum, q, j) => sum + q * weight(i, j), 0));
  const columnWeights = columns.map((_, j) => rows.reduce((sum, p, i) => sum + p * weight(i, j), 0));
  const observed = counts.flatMap((row, i) => row.map((count, j) => (count / n) * weight(i, j)));
  const po = observed.reduce((sum, value) => sum + value, 0);
  const pe = rows.reduce((sum, p, i) => sum + p * (rowWeights[i] as number), 0);
  if (!(n > 0 && pe < 1))
    throw new RangeError(`Cannot compute kappa as more than one class must be used: current value is ${n}`);
  const kappa = (po - pe) / (1 - pe);
  let spread = 0;
  for (const [i, row] of counts.entries())
    for (const [j, count] of row.entries())
      spread +=
        (count / n) *
        (weight(i, j) - ((rowWeights[i] as number) + (columnWeights[j] as number)) * (1 - kappa)) ** 2;
  const variance = (spread - (kappa - pe * (1 - kappa)) ** 2) / (n * (1 - pe) ** 2);
  const standardError = Math.sqrt(Math.max(0, variance));
  const half = normalQuantile((1 + confidence) / 2, 0, 1) * standardError;
  return {
    n,
    observed: po,
    expected: pe,
    kappa,
    standardError,
    low: kappa - half,
    high: Math.min(1, kappa + half),
  };
}
