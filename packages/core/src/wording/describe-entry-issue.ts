import type { EntryIssue } from "../entry/index.ts";
import { describeProposals } from "./describe-proposals.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * Why a typed text was not taken and what to enter instead, as sentences for the person who typed it.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readEntry } from "@steelyard/core/entry";
 * import { describeEntryIssue } from "@steelyard/core/wording";
 *
 * const arm = readEntry("armMm", "-19");
 * assert.equal(
 *   !arm.ok && describeEntryIssue(arm.error),
 *   "Arm circumference must be more than 0\u00a0mm: −19\u00a0mm was entered.",
 * );
 * ```
 */
export function describeEntryIssue(issue: EntryIssue, catalogue: MessageCatalogue = ENGLISH): string {
  const proposals = "proposals" in issue ? describeProposals(issue.proposals, catalogue) : "";
  return `${say(catalogue, "entry-issue", issue)} ${proposals}`.trimEnd();
}
