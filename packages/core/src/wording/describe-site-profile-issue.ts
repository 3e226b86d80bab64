import type { CalibrationIssue, FieldFault, SiteProfileIssue } from "../body/index.ts";
import { ENGLISH_SITE, type SiteCatalogue } from "./english-site.ts";

/**
 * Why a site profile cannot be used, one sentence or, of a faulty one, one a fault.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeSiteProfileIssue } from "@steelyard/core/wording";
 * const [sentence] = describeSiteProfileIssue({ type: "other-model", profileModel: "1", currentModel: "2" });
 * assert.match(sentence ?? "", /made for body model 1, and this is body model 2/);
 * ```
 */
export function describeSiteProfileIssue(
  issue: SiteProfileIssue,
  catalogue: SiteCatalogue = ENGLISH_SITE,
): readonly string[] {
  if (issue.type === "faulty") return issue.faults.map((fault) => describeFieldFault(fault, catalogue));
  return [(catalogue.profile[issue.type] as (issue: SiteProfileIssue) => string)(issue)];
}

/**
 * What is wrong with one field of a file: "armSdMm must be a number."
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeFieldFault } from "@steelyard/core/wording";
 * assert.equal(describeFieldFault({ place: "armSdMm", problem: { type: "missing" } }), "armSdMm is missing.");
 * ```
 */
export function describeFieldFault(
  { place, problem }: FieldFault,
  catalogue: SiteCatalogue = ENGLISH_SITE,
): string {
  const sentence = catalogue.fault[problem.type] as (values: FieldFault["problem"]) => string;
  return `${place === "" ? catalogue.wholeFile : place} ${sentence(problem)}.`;
}

/**
 * Why no calibration can be made of the rows, and what to do.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeCalibrationIssue } from "@steelyard/core/wording";
 * assert.match(
 *   describeCalibrationIssue({ type: "too-few-children", children: 8, fewest: 20, leftOut: 0 }),
 *   /at least 20 children/,
 * );
 * ```
 */
export function describeCalibrationIssue(
  issue: CalibrationIssue,
  catalogue: SiteCatalogue = ENGLISH_SITE,
): string {
  return (catalogue.calibration[issue.type] as (issue: CalibrationIssue) => string)(issue);
}
