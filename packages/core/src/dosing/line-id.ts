/** The id of the line of a use: `adrenaline.arrest`. Neither part has a point in it. */
export function lineIdOf({ medicine, use }: { readonly medicine: string; readonly use: string }): string {
  return `${medicine}.${use}`;
}

/**
 * The id of the medicine in the id of a line, whether or not a formulary has that line.
 *
 * ```ts
 * import { medicineIdOf } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * assert.equal(medicineIdOf("adrenaline.arrest"), "adrenaline");
 * ```
 */
export function medicineIdOf(lineId: string): string {
  return lineId.split(".", 1)[0] ?? lineId;
}
