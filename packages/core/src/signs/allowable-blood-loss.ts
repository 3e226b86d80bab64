import { withoutDrift } from "../units/without-drift.ts";

/**
 * The blood loss, mL, after which the haematocrit would have fallen to the lowest that is accepted.
 *
 * blood volume x (haematocrit - lowest) / haematocrit; 0 where it is already that low.
 *
 * Inputs: `bloodVolumeMl` (more than 0), `haematocrit` and `lowestHaematocrit` as fractions in (0, 1). Throws a
 * `RangeError` outside these.
 *
 * @source common-practice
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { allowableBloodLoss } from "@steelyard/core/signs";
 *
 * const loss = { bloodVolumeMl: 1500, haematocrit: 0.4, lowestHaematocrit: 0.25 };
 * assert.equal(allowableBloodLoss(loss), 562.5);
 * ```
 */
export function allowableBloodLoss({
  bloodVolumeMl,
  haematocrit,
  lowestHaematocrit,
}: {
  readonly bloodVolumeMl: number;
  readonly haematocrit: number;
  readonly lowestHaematocrit: number;
}): number {
  if (!(bloodVolumeMl > 0 && bloodVolumeMl < Number.POSITIVE_INFINITY)) {
    throw new RangeError(
      `Cannot compute an allowable blood loss as bloodVolumeMl must be more than 0: current value is ${bloodVolumeMl}`,
    );
  }
  for (const [name, value] of Object.entries({ haematocrit, lowestHaematocrit })) {
    if (!(value > 0 && value < 1)) {
      throw new RangeError(
        `Cannot compute an allowable blood loss as ${name} must be in (0, 1): current value is ${value}`,
      );
    }
  }
  if (haematocrit <= lowestHaematocrit) return 0;
  return withoutDrift((bloodVolumeMl * (haematocrit - lowestHaematocrit)) / haematocrit);
}
