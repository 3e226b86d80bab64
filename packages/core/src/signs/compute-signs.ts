import { type ChildSizeInput, childSize } from "../lookup/index.ts";
import { pressures } from "./pressures.ts";
import { rate } from "./rates.ts";
import type { SignLine } from "./sign-line.ts";
import { volumes } from "./volumes.ts";

/**
 * What is normal for one child: rates per minute, pressures in mmHg, blood volume in mL, urine in mL/h.
 *
 * By the age, or by the height-age where only the length is known, and marked so. Always the same lines in the same
 * order; a line without a value says why.
 *
 * Inputs: `totalKg` (more than 0), and any of `ageMonths` (0 or more), `lengthCm` (more than 0), `sex`, `idealKg`.
 * Gives lines with value, unit, centiles, working, warnings and sources. Throws a `RangeError` on numbers that are
 * not finite or out of these ranges.
 *
 * @source fleming2011
 * @source aha-2010-paediatric, hypotension
 * @source haque2007
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { computeSigns } from "@steelyard/core/signs";
 *
 * const lines = computeSigns({ ageMonths: 48, totalKg: 16 });
 * const limit = lines.find(({ id }) => id === "systolic-pressure.lower-limit");
 * assert.ok(limit?.unavailable === undefined && limit?.value === 78);
 * ```
 */
export function computeSigns(input: ChildSizeInput): readonly SignLine[] {
  const child = childSize("find normal signs", input);
  return [rate(child, "heart-rate"), rate(child, "respiratory-rate"), ...pressures(child), ...volumes(child)];
}
