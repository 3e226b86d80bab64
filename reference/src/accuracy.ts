/** One child as the accuracy tables see it: what was estimated, and the scale. */
export interface Judged {
  readonly estimateKg: number;
  readonly low95Kg: number;
  readonly high95Kg: number;
  readonly trueKg: number;
}

/** Accuracy of estimates; every percentage error is (estimate - true) / true. */
export interface Accuracy {
  readonly children: number;
  /** Share within 10 % and 20 % of the true weight, %. */
  readonly pw10: number;
  readonly pw20: number;
  /** Mean and standard deviation (n - 1) of the percentage error, %. */
  readonly meanError: number;
  readonly sdError: number;
  /** Share of true weights inside the 95 % interval, %. */
  readonly coverage: number;
  /** Median half-width of the interval, % of the estimate. */
  readonly halfWidth: number;
}

/**
 * Sums up how well weights were estimated. Throws a `RangeError` when there are none.
 *
 * @source wells2017
 */
export function measureAccuracy(rows: readonly Judged[]): Accuracy {
  if (rows.length === 0) throw new RangeError("Cannot measure accuracy as rows must not be empty");
  const errors = rows.map(({ estimateKg, trueKg }) => (100 * (estimateKg - trueKg)) / trueKg);
  const share = (holds: (row: Judged, error: number) => boolean): number =>
    (100 * rows.filter((row, i) => holds(row, errors[i] as number)).length) / rows.length;
  const mean = errors.reduce((sum, error) => sum + error, 0) / rows.length;
  const squares = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0);
  const widths = rows
    .map(({ low95Kg, high95Kg, estimateKg }) => (50 * (high95Kg - low95Kg)) / estimateKg)
    .sort((a, b) => a - b);
  return {
    children: rows.length,
    pw10: share((_, error) => Math.abs(error) <= 10 + 1e-9),
    pw20: share((_, error) => Math.abs(error) <= 20 + 1e-9),
    meanError: mean,
    sdError: rows.length > 1 ? Math.sqrt(squares / (rows.length - 1)) : 0,
    coverage: share(({ low95Kg, high95Kg, trueKg }) => trueKg >= low95Kg && trueKg <= high95Kg),
    halfWidth: widths[Math.floor(widths.length / 2)] as number,
  };
}
