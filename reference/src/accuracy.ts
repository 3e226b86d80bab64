/** An estimated weight, and the scale's. */
export interface Weighed {
  readonly estimateKg: number;
  readonly trueKg: number;
}

/** One child as the accuracy tables see it: what was estimated, and the scale. */
export interface Judged extends Weighed {
  readonly low95Kg: number;
  readonly high95Kg: number;
}

/** Errors of estimates; every percentage error is (estimate - true) / true. */
export interface Errors {
  readonly children: number;
  /** Share within 10 % and 20 % of the true weight, %. */
  readonly pw10: number;
  readonly pw20: number;
  /** Mean and standard deviation (n - 1) of the percentage error, %. */
  readonly meanError: number;
  readonly sdError: number;
}

/** Accuracy of estimates that come with an interval. */
export interface Accuracy extends Errors {
  /** Share of true weights inside the 95 % interval, %. */
  readonly coverage: number;
  /** Median half-width of the interval, % of the estimate. */
  readonly halfWidth: number;
}

/** (estimate - true) / true, %. */
export function percentError({ estimateKg, trueKg }: Weighed): number {
  return (100 * (estimateKg - trueKg)) / trueKg;
}

/**
 * Sums up the errors of estimates. Throws a `RangeError` when there are none.
 *
 * @source wells2017
 */
export function measureErrors(rows: readonly Weighed[]): Errors {
  if (rows.length === 0) throw new RangeError("Cannot measure accuracy as rows must not be empty");
  const errors = rows.map(percentError);
  const mean = errors.reduce((sum, error) => sum + error, 0) / rows.length;
  const squares = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0);
  return {
    children: rows.length,
    pw10: percentOf(errors, (error) => Math.abs(error) <= 10 + 1e-9),
    pw20: percentOf(errors, (error) => Math.abs(error) <= 20 + 1e-9),
    meanError: mean,
    sdError: rows.length > 1 ? Math.sqrt(squares / (rows.length - 1)) : 0,
  };
}

/** Sums up how well weights were estimated. Throws a `RangeError` when there are none. */
export function measureAccuracy(rows: readonly Judged[]): Accuracy {
  const errors = measureErrors(rows);
  const widths = rows
    .map(({ low95Kg, high95Kg, estimateKg }) => (50 * (high95Kg - low95Kg)) / estimateKg)
    .sort((a, b) => a - b);
  return {
    ...errors,
    coverage: percentOf(rows, ({ low95Kg, high95Kg, trueKg }) => trueKg >= low95Kg && trueKg <= high95Kg),
    halfWidth: widths[Math.floor(widths.length / 2)] as number,
  };
}

function percentOf<T>(items: readonly T[], holds: (item: T) => boolean): number {
  return (100 * items.filter(holds).length) / items.length;
}
