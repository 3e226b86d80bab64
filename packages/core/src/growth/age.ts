import { type Days, days, type Months, months } from "../units/index.ts";

/** 365.25 / 12. */
const daysPerMonth = 30.4375;

/**
 * Age in days from age in months: days = months x 30.4375.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { monthsToDays } from "@steelyard/core/growth";
 * import { months } from "@steelyard/core/units";
 *
 * assert.equal(monthsToDays(months(24)), 730.5);
 * ```
 */
export function monthsToDays(ageMonths: Months): Days {
  return days(ageMonths * daysPerMonth);
}

/**
 * Age in months from age in days: months = days / 30.4375.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { daysToMonths } from "@steelyard/core/growth";
 * import { days } from "@steelyard/core/units";
 *
 * assert.equal(daysToMonths(days(1826.25)), 60);
 * ```
 */
export function daysToMonths(ageDays: Days): Months {
  return months(ageDays / daysPerMonth);
}
