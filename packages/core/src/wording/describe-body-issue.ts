import type { BodyIssue } from "../body/index.ts";
import type { QuantityField } from "../entry/index.ts";
import { describeProposals } from "./describe-proposals.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * Why no weight can be given and what to do about it, as sentences.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeBodyIssue } from "@steelyard/core/wording";
 *
 * const sentence = describeBodyIssue({
 *   type: "measurement-out-of-range",
 *   measurement: "armMm",
 *   value: 45,
 *   low: 110,
 *   high: 330,
 *   proposal: { from: "cm", value: 450 },
 * });
 * assert.match(sentence, /Arm circumference 45\smm is outside/);
 * assert.match(sentence, /Did you mean 45\scm \(450\smm\)\?$/);
 * ```
 */
export function describeBodyIssue(issue: BodyIssue, catalogue: MessageCatalogue = ENGLISH): string {
  const sentence = say(catalogue, "body-issue", issue);
  if (!("proposal" in issue) || issue.proposal === undefined) return sentence;
  const { from, value } = issue.proposal;
  const field = issue.measurement as QuantityField;
  const question = describeProposals([{ type: "unit", field, typed: issue.value, from, value }], catalogue);
  return `${sentence} ${question}`;
}
