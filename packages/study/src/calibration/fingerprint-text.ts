import type { WeighedChild } from "@steelyard/core/body";

/**
 * The text whose SHA-256 is the fingerprint of the rows a calibration was made from: of each child its measurements in the order of their
 * names and its weight, one a line, lines sorted. The order of rows and columns, the units and marks they were written in and
 * all other columns do not matter.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { centimetres } from "@steelyard/core/units";
 * import { fingerprintText } from "@steelyard/study/calibration";
 *
 * const text = fingerprintText([{ measurements: { lengthCm: centimetres(136) }, weightKg: 28 }]);
 * assert.equal(text, '[["lengthCm",136],["weightKg",28]]');
 * ```
 */
export function fingerprintText(rows: readonly WeighedChild[]): string {
  const lines = rows.map(({ measurements, weightKg }) => {
    const { scaleKg: _, ...others } = measurements;
    const known = Object.entries(others).filter(([, value]) => value !== undefined);
    known.sort(([a], [b]) => (a < b ? -1 : 1));
    return JSON.stringify([...known, ["weightKg", weightKg]]);
  });
  return lines.sort().join("\n");
}
