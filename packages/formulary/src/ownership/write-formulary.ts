import type { Formulary } from "@steelyard/core/dosing";

/**
 * The text of a formulary file: indented by two spaces, fields in the order they have, one line end at the end.
 *
 * A signed file has exactly this text; anything else has been edited since.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { writeFormulary } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.deepEqual(JSON.parse(writeFormulary(draftFormulary)), draftFormulary);
 * ```
 */
export function writeFormulary(formulary: Formulary): string {
  return `${JSON.stringify(formulary, undefined, 2)}\n`;
}
