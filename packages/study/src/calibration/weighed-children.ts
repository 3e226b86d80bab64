import type { WeighedChild } from "@steelyard/core/body";
import { childAt } from "../methods/child-at.ts";
import type { StudyTable } from "../table/study-table.ts";

/**
 * The children of a table with all that was measured of them and their scale weight: what `calibrateSite` learns from.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { weighedChildren } from "@steelyard/study/calibration";
 *
 * const numbers = new Map([["weightKg", Float64Array.of(28, Number.NaN)], ["lengthCm", Float64Array.of(136, 90)]]);
 * const table = { rows: 2, numbers, words: new Map(), rowNumbers: Int32Array.of(1, 2) };
 * assert.deepEqual(weighedChildren(table), [{ measurements: { lengthCm: 136 }, weightKg: 28 }]);
 * ```
 */
export function weighedChildren(table: StudyTable): readonly WeighedChild[] {
  const child = childAt(table);
  const weights = table.numbers.get("weightKg");
  const children: WeighedChild[] = [];
  for (let row = 0; row < table.rows; row++) {
    const weightKg = weights?.[row];
    if (weightKg !== undefined && !Number.isNaN(weightKg))
      children.push({ measurements: child(row), weightKg });
  }
  return children;
}
