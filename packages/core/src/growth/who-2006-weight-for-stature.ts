import type { Centimetres, Days, Kilograms } from "../units/index.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import { type Stance, statureForTables } from "./stature-for-tables.ts";
import { who2006WeightForHeight, who2006WeightForLength } from "./who-2006.ts";

/**
 * The WHO 2006 table for a stature and where to look it up: weight for length or weight for height, chosen by
 * `statureForTables`, whose inputs these are.
 *
 * @source who-anthro, z-score-weight-for-lenhei.R
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { who2006WeightForStature, zScore } from "@steelyard/core/growth";
 * import { centimetres, days, kilograms } from "@steelyard/core/units";
 *
 * const table = who2006WeightForStature({ cm: centimetres(120), ageDays: days(1001) });
 * const z = zScore({ ...table, sex: "m", value: kilograms(18) });
 * assert.ok(z.ok && Math.abs(z.value - -2.39) < 0.005);
 * ```
 */
export function who2006WeightForStature(stature: {
  readonly cm: Centimetres;
  readonly stance?: Stance;
  readonly ageDays?: Days;
}): { readonly standard: GrowthStandard<Centimetres, Kilograms>; readonly at: Centimetres } {
  const { kind, cm } = statureForTables(stature);
  return { standard: kind === "length" ? who2006WeightForLength : who2006WeightForHeight, at: cm };
}
