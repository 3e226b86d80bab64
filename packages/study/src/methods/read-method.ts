import { err, ok, type Result } from "@steelyard/core/result";
import { plainFormulas } from "../formulas/index.ts";
import type { BodyInput, Method } from "./method.ts";

export interface MethodIssue {
  readonly type: "method-unknown";
  readonly text: string;
  readonly columns: readonly string[];
  readonly inputs: readonly string[];
  readonly formulas: readonly string[];
}

/** The words for the inputs of the body model, as typed: `body:length+arm+sex`. */
export const BODY_INPUTS: Readonly<Record<string, BodyInput>> = {
  length: "lengthCm",
  arm: "armMm",
  waist: "waistCm",
  thigh: "thighCm",
  calf: "calfCm",
  head: "headCm",
  sex: "sex",
  age: "ageMonths",
  build: "build",
  carer: "carerKg",
};

/**
 * Reads `body:length+arm`, `formula:luscombe2007` or the name of a column of estimates.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readMethod } from "@steelyard/study/methods";
 *
 * const method = readMethod("body:length+arm", []);
 * assert.deepEqual(method.ok && method.value, { type: "body", inputs: ["lengthCm", "armMm"] });
 * ```
 */
export function readMethod(text: string, columns: readonly string[]): Result<Method, MethodIssue> {
  if (columns.includes(text)) return ok({ type: "column", column: text });
  const [kind, rest = ""] = text.split(/:(.*)/s);
  if (kind === "body" && rest !== "") {
    const inputs = rest.split("+").map((word) => BODY_INPUTS[word.trim()]);
    if (inputs.every((input) => input !== undefined)) return ok({ type: "body", inputs });
  }
  if (kind === "formula" && plainFormulas.some(({ sourceId }) => sourceId === rest))
    return ok({ type: "formula", sourceId: rest });
  return err({
    type: "method-unknown",
    text,
    columns,
    inputs: Object.keys(BODY_INPUTS),
    formulas: plainFormulas.map(({ sourceId }) => sourceId),
  });
}

/**
 * The short name of a method, as it is typed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { methodId } from "@steelyard/study/methods";
 *
 * assert.equal(methodId({ type: "body", inputs: ["lengthCm", "armMm"] }), "body:length+arm");
 * ```
 */
export function methodId(method: Method): string {
  switch (method.type) {
    case "column":
      return method.column;
    case "formula":
      return `formula:${method.sourceId}`;
    case "body":
      return `body:${method.inputs.map((input) => Object.keys(BODY_INPUTS).find((word) => BODY_INPUTS[word] === input)).join("+")}`;
  }
}
