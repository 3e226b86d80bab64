import type { PopulationShift } from "./site-profile.ts";

/** Where the weight's z is expected, and how far around. */
export interface WeightZ {
  readonly zMean: number;
  readonly zScale: number;
}

/**
 * Moves and widens the weight's z as the site's children ask for: mean + spread (shift + slope mean), and the spread times the root
 * of (own spread)^2 + the variance of (shift + slope mean).
 */
export function shiftPopulation({ zMean, zScale }: WeightZ, population: PopulationShift): WeightZ {
  const { shift, slope, variance, spread } = population;
  const factor = spread ** 2 + variance.shift + 2 * variance.covariance * zMean + variance.slope * zMean ** 2;
  return { zMean: zMean + zScale * (shift + slope * zMean), zScale: zScale * Math.sqrt(factor) };
}
