import { exactly, toNumber } from "../units/rational.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { WeightTier } from "./rule.ts";
import { tieredAmount } from "./tiered-amount.ts";

/** mL per kg and hour for the first 10 kg, the next 10 kg and every kg above. @source holliday-segar-1957 */
export const HOURLY_MAINTENANCE: readonly WeightTier[] = [
  { upToKg: 10, perKg: 4 },
  { upToKg: 20, perKg: 2 },
  { perKg: 1 },
];

/** mL per kg and day; not 24 times the hourly figures, which are rounded. @source holliday-segar-1957 */
const DAILY_MAINTENANCE: readonly WeightTier[] = [
  { upToKg: 10, perKg: 100 },
  { upToKg: 20, perKg: 50 },
  { perKg: 20 },
];

/**
 * Maintenance fluid by tiers of weight, mL for one hour or one day.
 *
 * Hour: 4 mL for each of the first 10 kg, 2 for each of the next 10, 1 for each above. Day: 100, 50 and 20 mL. kg above 0;
 * `maximumMl` bounds the result where the site has a ceiling. Not for the first days of life. Throws a `RangeError` on
 * a weight that no child has.
 *
 * @source holliday-segar-1957
 *
 * ```ts
 * import { maintenanceFluidMl } from "@steelyard/core/dosing";
 * import { kilograms } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(maintenanceFluidMl({ kg: kilograms(14), per: "h" }), 48);
 * assert.equal(maintenanceFluidMl({ kg: kilograms(25), per: "day" }), 1600);
 * ```
 */
export function maintenanceFluidMl({
  kg,
  per,
  maximumMl = Number.POSITIVE_INFINITY,
}: {
  readonly kg: number;
  readonly per: "h" | "day";
  readonly maximumMl?: number;
}): number {
  if (!(kg > 0 && kg <= 1000)) {
    throw new RangeError(`Cannot compute maintenance as kg must be in (0, 1000]: current value is ${kg}`);
  }
  const tiers = per === "h" ? HOURLY_MAINTENANCE : DAILY_MAINTENANCE;
  return Math.min(maximumMl, toNumber(tieredAmount({ kg: exactly(withoutDrift(kg)), tiers }).sum));
}
