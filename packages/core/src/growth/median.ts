import { err, ok, type Result } from "../result.ts";
import type { GrowthIssue, GrowthStandard, Sex } from "./growth-standard.ts";
import { indexIssue } from "./index-issue.ts";
import { requireFinite, requireSex } from "./require.ts";

/**
 * The median of a standard, in its unit (kg, cm or kg/m2), interpolated linearly between published rows.
 *
 * Inputs: `standard`, `sex`, `at` as for `zScore`. Gives M, or an issue when `at` lies outside the standard.
 * Throws a `RangeError` on NaN.
 *
 * @source who-growth-2006
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { median, who2006WeightForLength } from "@steelyard/core/growth";
 * import { centimetres } from "@steelyard/core/units";
 *
 * const girl = median({ standard: who2006WeightForLength, sex: "f", at: centimetres(75) });
 * assert.ok(girl.ok && girl.value === 9.149);
 * ```
 */
export function median<Index extends number, Value extends number>({
  standard,
  sex,
  at,
}: {
  readonly standard: GrowthStandard<Index, Value>;
  readonly sex: Sex;
  readonly at: Index;
}): Result<Value, GrowthIssue> {
  requireFinite("look up a median", { at });
  requireSex("look up a median", sex);
  const issue = indexIssue(standard, at);
  return issue ? err(issue) : ok(standard.asValue(standard.lms({ sex, at }).m));
}
