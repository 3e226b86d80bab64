import type { WeighedChild } from "@steelyard/core/body";
import { fingerprintText } from "@steelyard/study/calibration";
import { sha256 } from "../formulary/sha256.ts";

/** SHA-256 of the rows a calibration was made from, by which the same rows are known again. */
export function fingerprintRows(rows: readonly WeighedChild[]): string {
  return sha256(fingerprintText(rows));
}
