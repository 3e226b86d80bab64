import { err, ok, type Result } from "@steelyard/core/result";
import type { FormularyFault } from "../formulary-fault.ts";

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
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const position = /position (\d+)/.exec(message)?.[1];
    const place = position === undefined ? "end of the text" : lineOf(text, Number(position));
    return err([{ place, message: `is not JSON: ${message.replace(/ (in JSON )?at position.*$/s, "")}` }]);
  }
  const twice = repeatedFields(text);
  return twice.length === 0 ? ok(value) : err(twice);
}

/** Tokens of a text that is known to be JSON: strings, and the marks that open, close and part. */
const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\],:]/g;

function repeatedFields(text: string): FormularyFault[] {
  const faults: FormularyFault[] = [];
  const open: (Set<string> | "list")[] = [];
  let last: RegExpMatchArray | undefined;
  for (const token of text.matchAll(TOKEN)) {
    const [mark] = token;
    if (mark === "{") open.push(new Set());
    else if (mark === "[") open.push("list");
    else if (mark === "}" || mark === "]") open.pop();
    else if (mark === ":" && last !== undefined) {
      const fields = open.at(-1);
      const name: unknown = JSON.parse(last[0]);
      if (fields instanceof Set && typeof name === "string") {
        if (fields.has(name)) {
          faults.push({ place: lineOf(text, last.index ?? 0), message: `field "${name}" is there twice` });
        }
        fields.add(name);
      }
    }
    last = token;
  }
  return faults;
}

function lineOf(text: string, position: number): string {
  return `line ${text.slice(0, position).split("\n").length}`;
}
