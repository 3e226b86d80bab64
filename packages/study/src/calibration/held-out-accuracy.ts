import type { ScoredChild } from "@steelyard/core/body";

/** Accuracy on children that the calibration has not seen; errors (estimate minus scale) / scale, %. */
export interface HeldOutAccuracy {
  readonly children: number;
  readonly meanErrorPercent: number;
  readonly rmspe: number;
  readonly within10Percent: number;
  readonly within20Percent: number;
  /** Scale weights inside the 95 % range. */
  readonly coveragePercent: number;
}

/** Percentage error of a scored child. */
export function errorPercent({ estimateKg, weightKg }: ScoredChild): number {
  return (100 * (estimateKg - weightKg)) / weightKg;
}

export function accuracyOf(scored: readonly ScoredChild[]): HeldOutAccuracy {
  const n = Math.max(1, scored.length);
  const errors = scored.map(errorPercent);
  const share = (limit: number): number =>
    (100 * errors.filter((error) => Math.abs(error) - 1e-9 <= limit).length) / n;
  return {
    children: scored.length,
    meanErrorPercent: errors.reduce((sum, error) => sum + error, 0) / n,
    rmspe: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / n),
    within10Percent: share(10),
    within20Percent: share(20),
    coveragePercent:
      (100 *
        scored.filter(({ weightKg, low95Kg, high95Kg }) => weightKg >= low95Kg && weightKg <= high95Kg)
          .length) /
      n,
  };
}
