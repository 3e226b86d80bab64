import type { MissingLimb } from "./measurements.ts";

/**
 * Share of the whole body's weight that a missing limb, or part of one, would weigh. Adult figures: a child's limbs are lighter.
 *
 * @source osterkamp1995
 */
export const limbFraction: Readonly<Record<MissingLimb, number>> = {
  hand: 0.007,
  forearm: 0.023,
  arm: 0.05,
  foot: 0.015,
  "lower-leg": 0.059,
  leg: 0.16,
};
