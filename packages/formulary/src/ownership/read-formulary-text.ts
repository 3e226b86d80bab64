import { err, ok, type Result } from "@steelyard/core/result";
import type { FormularyFault } from "../formulary-fault.ts";
import { scanJson } from "./scan-json.ts";

/**
 * The data of a JSON text, or what is wrong with it and where: a slip of the syntax, or a field that is there twice.
 *
 * JSON takes the second of two fields of one name and says nothing; in a formulary that would be a silent change.
 *
 * ```ts
 * import { readFormularyText } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.deepEqual(readFormularyText('{"maximum": 1,\n "maximum": 2}'), {
 *   ok: false,
 *   error: [{ place: "line 2", message: 'field "maximum" is there twice' }],
 * });
 * ```
 */
export function readFormularyText(text: string): Result<unknown, readonly FormularyFault[]> {
  const faults = scanJson(text).map(({ position, message }) => ({ place: lineOf(text, position), message }));
  return faults.length === 0 ? ok(JSON.parse(text)) : err(faults);
}

function lineOf(text: string, position: number): string {
  return `line ${text.slice(0, position).split("\n").length}`;
}
