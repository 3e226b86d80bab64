import type { ProblemId } from "../dosing/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";

/**
 * The heading that a use is listed under: "Salts and sugar".
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeProblem } from "@steelyard/core/wording";
 * assert.equal(describeProblem("salts-and-sugar"), "Salts and sugar");
 * ```
 */
export function describeProblem(problem: ProblemId, catalogue: MessageCatalogue = ENGLISH): string {
  return catalogue["problem.name"]({ problem });
}
