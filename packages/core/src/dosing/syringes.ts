/** A syringe: what it holds and the distance between its marks, mL. */
export interface Syringe {
  readonly capacityMl: number;
  readonly markMl: number;
}

/**
 * Syringes of the usual sizes with the marks common practice gives them, smallest first.
 *
 * A site with other syringes passes its own list.
 *
 * @source syringe-marks
 */
export const usualSyringes: readonly Syringe[] = [
  { capacityMl: 1, markMl: 0.01 },
  { capacityMl: 3, markMl: 0.1 },
  { capacityMl: 5, markMl: 0.2 },
  { capacityMl: 10, markMl: 0.5 },
  { capacityMl: 20, markMl: 1 },
  { capacityMl: 50, markMl: 1 },
];

/** The least a 1 mL syringe measures, mL: below it the dead space of the hub is as large as the dose. @source syringe-marks */
export const MEASURABLE_ML = 0.1;

/** Rounding may move a dose by this much, percent; by no more than the second where nothing better is at hand. @source rounding-tolerance */
export const ROUNDING_TOLERANCE_PERCENT = 5;
export const ROUNDING_CEILING_PERCENT = 10;

/** Steps in which volumes above the largest syringe are set on a pump or read off a burette, mL. @source common-practice */
export const LARGE_VOLUME_STEPS: readonly { readonly upToMl: number; readonly stepMl: number }[] = [
  { upToMl: 100, stepMl: 1 },
  { upToMl: 200, stepMl: 5 },
  { upToMl: Number.POSITIVE_INFINITY, stepMl: 10 },
];

/** Steps in which a syringe pump is set, mL/h: finer below 1 mL/h. @source common-practice */
export const PUMP_STEPS = { below1MlPerH: 0.01, from1MlPerH: 0.1 } as const;
