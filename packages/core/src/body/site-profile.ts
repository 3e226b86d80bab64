import {
  defaultMeasurementErrors,
  type MeasurementErrors,
  referenceMeasurementErrors,
} from "./measurement-errors.ts";

/**
 * How a site's children differ from those of the fit, on the scale of the estimate's own spread: the weight's z moves by
 * spread x (shift + slope x expected z), and the spread is multiplied by `spread`. Uncertainty about shift and slope widens the
 * interval; an uncalibrated site has no shift and slope, and all the uncertainty.
 */
export interface PopulationShift {
  readonly shift: number;
  readonly slope: number;
  readonly variance: { readonly shift: number; readonly slope: number; readonly covariance: number };
  /** Factor on the residual spread. */
  readonly spread: number;
}

/** What the model must know of the place it is used in. */
export interface SiteProfile {
  readonly population: PopulationShift;
  readonly errors: MeasurementErrors;
}

/**
 * Between-population variance of shift and slope, and the spread, for a site that has not been calibrated: how far the open surveys lie
 * from the fit, each left out of it, and how much more than its children they scatter. Eight surveys leave such figures uncertain
 * themselves, so each is the upper 95 % bound (computed in reference/surveys-log.md).
 *
 * @source nutrition-surveys
 */
export const betweenPopulations = { shift: 0.71, slope: 0.27, spread: 1.13 } as const;

/** A site nobody has calibrated: no shift, but room for one. */
export const uncalibratedSite: SiteProfile = {
  population: {
    shift: 0,
    slope: 0,
    variance: { shift: betweenPopulations.shift, slope: betweenPopulations.slope, covariance: 0 },
    spread: betweenPopulations.spread,
  },
  errors: defaultMeasurementErrors,
};

/** The population and the technique of the fit itself, for judging the model on children like its own. */
export const referenceSite: SiteProfile = {
  population: { shift: 0, slope: 0, variance: { shift: 0, slope: 0, covariance: 0 }, spread: 1 },
  errors: referenceMeasurementErrors,
};
