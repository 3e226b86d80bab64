import { err, ok, type Result } from "../result.ts";
import type { GrowthIssue, GrowthStandard, Sex } from "./growth-standard.ts";
import { indexIssue } from "./index-issue.ts";
import { adjustedZ, plainZ } from "./lms.ts";
import { requireFinite, requireSex } from "./require.ts";

/** In the unit of the standard (kg, cm or kg/m2): wide enough for any slip short of nonsense. */
const lowestValue = 0.01;
const highestValue = 1000;

/**
 * The z-score of a value: how many standard deviations it lies from the median of healthy children of the
 * same sex and age (or length).
 *
 * z = ((value / M)^L - 1) / (L S). Where WHO says so (weight, body mass index and arm circumference, not
 * length, height or head), a value beyond 3 SD is measured in units of the distance between 2 and 3 SD.
 * L, M and S are interpolated linearly between the published rows.
 *
 * Inputs: `standard`, one of this module's; `at`, age or length in the standard's unit and range; `value` in
 * the standard's unit, 0.01 to 1000. Gives z, or an issue that names what is out of range. Throws a
 * `RangeError` on NaN.
 *
 * @source who-anthro, z-score-helper.R: rule beyond 3 SD, and which indicators it is for
 * @source who-growth-2006
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { who2006WeightForLength, zScore } from "@steelyard/core/growth";
 * import { centimetres, kilograms } from "@steelyard/core/units";
 *
 * const z = zScore({ standard: who2006WeightForLength, sex: "m", at: centimetres(85), value: kilograms(7.5) });
 * assert.ok(z.ok && Math.abs(z.value - -5.2) < 0.005);
 * ```
 */
export function zScore<Index extends number, Value extends number>({
  standard,
  sex,
  at,
  value,
}: {
  readonly standard: GrowthStandard<Index, Value>;
  readonly sex: Sex;
  readonly at: Index;
  readonly value: Value;
}): Result<number, GrowthIssue> {
  requireFinite("compute a z-score", { at, value });
  requireSex("compute a z-score", sex);
  const issue = indexIssue(standard, at);
  if (issue) return err(issue);
  if (value < lowestValue || value > highestValue) {
    return err({
      type: "value-out-of-range",
      standardId: standard.id,
      quantity: standard.value.name,
      unit: standard.value.unit,
      value,
      low: lowestValue,
      high: highestValue,
    });
  }
  const lms = standard.lms({ sex, at });
  return ok(standard.adjustedBeyond3Sd ? adjustedZ(lms, value) : plainZ(lms, value));
}
