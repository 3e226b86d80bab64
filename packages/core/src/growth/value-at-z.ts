import { err, ok, type Result } from "../result.ts";
import type { GrowthIssue, GrowthStandard, Sex } from "./growth-standard.ts";
import { indexIssue } from "./index-issue.ts";
import { adjustedValue, type Lms, plainValue } from "./lms.ts";
import { requireFinite, requireSex } from "./require.ts";

/** No body lies further from the median; keeps the answer finite. */
const furthestZ = 50;

/**
 * The value at a z-score, in the unit of the standard (kg, cm or kg/m2): the inverse of `zScore`.
 *
 * value = M (1 + L S z)^(1/L), and beyond 3 SD, where WHO says so, in steps of the distance between 2 and
 * 3 SD.
 *
 * Inputs: `standard`, `sex`, `at` as for `zScore`; `z`, -50 to 50. Gives the value, or an issue: `at` outside
 * the standard, or no value greater than 0 has this z. Throws a `RangeError` on NaN.
 *
 * @source who-anthro, z-score-helper.R
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { valueAtZ, who2006WeightForLength } from "@steelyard/core/growth";
 * import { centimetres } from "@steelyard/core/units";
 *
 * const light = valueAtZ({ standard: who2006WeightForLength, sex: "m", at: centimetres(85), z: -2 });
 * assert.ok(light.ok && Math.abs(light.value - 9.809) < 0.0005);
 * ```
 */
export function valueAtZ<Index extends number, Value extends number>({
  standard,
  sex,
  at,
  z,
}: {
  readonly standard: GrowthStandard<Index, Value>;
  readonly sex: Sex;
  readonly at: Index;
  readonly z: number;
}): Result<Value, GrowthIssue> {
  requireFinite("compute the value at a z-score", { at, z });
  requireSex("compute the value at a z-score", sex);
  const issue = indexIssue(standard, at);
  if (issue) return err(issue);
  const lms = standard.lms({ sex, at });
  const value = standard.adjustedBeyond3Sd ? adjustedValue(lms, z) : plainValue(lms, z);
  const { low, high } = rangeOfZ(lms, standard.adjustedBeyond3Sd);
  if (!(z > low && z < high && value > 0 && Number.isFinite(value))) {
    return err({ type: "z-out-of-range", standardId: standard.id, value: z, low, high });
  }
  return ok(standard.asValue(value));
}

/** The z-scores, both ends excluded, that a value greater than 0 can have. */
function rangeOfZ(lms: Lms, adjusted: boolean): { low: number; high: number } {
  if (adjusted) {
    const at3 = adjustedValue(lms, -3);
    return { low: Math.max(-furthestZ, -3 - at3 / (adjustedValue(lms, -2) - at3)), high: furthestZ };
  }
  const pole = -1 / (lms.l * lms.s);
  return lms.l > 0
    ? { low: Math.max(-furthestZ, pole), high: furthestZ }
    : { low: -furthestZ, high: Math.min(furthestZ, pole) };
}
