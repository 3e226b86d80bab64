import type { BurnPercentIssue } from "../entry/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { ENGLISH_DOSING } from "./english-dosing.ts";

/**
 * Why a typed share of burnt body surface was not taken, in one sentence.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readBurnPercent } from "@steelyard/core/entry";
 * import { describeBurnPercentIssue } from "@steelyard/core/wording";
 * const read = readBurnPercent("a lot");
 * assert.match(read.ok ? "" : describeBurnPercentIssue(read.error), /is not a share of the body surface/);
 * ```
 */
export function describeBurnPercentIssue(
  issue: BurnPercentIssue,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.burnPercent[issue.type] as (issue: BurnPercentIssue) => string;
  return sentence(issue);
}
