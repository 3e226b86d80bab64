import { createHash } from "node:crypto";
import type { WeighedChild } from "@steelyard/core/body";

/**
 * SHA-256 of the rows a calibration was made from, by which the same rows are known again: of each child its measurements in the
 * order of their names and its weight, one a line, lines sorted. The order of rows and columns, the units and marks they were written
 * in and all other columns do not matter.
 */
export function fingerprintRows(rows: readonly WeighedChild[]): string {
  const lines = rows.map(({ measurements, weightKg }) => {
    const { scaleKg: _, ...others } = measurements;
    const known = Object.entries(others).filter(([, value]) => value !== undefined);
    known.sort(([a], [b]) => (a < b ? -1 : 1));
    return JSON.stringify([...known, ["weightKg", weightKg]]);
  });
  return createHash("sha256").update(lines.sort().join("\n")).digest("hex");
}
