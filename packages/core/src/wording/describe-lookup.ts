import type { LookupGap, LookupRest, LookupStep, LookupWarning } from "../lookup/index.ts";
import { ENGLISH_LOOKUP } from "./english-lookup.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";

/**
 * One step behind a size or a normal sign as one sentence: "Age 4 years ÷ 4 + 3.5 = 4.5 mm."
 *
 * ```ts
 * import { describeLookupStep } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const sentence = describeLookupStep({
 *   step: "linear", by: "age", value: 4, over: 4, plus: 3.5, result: 4.5, unit: "mm",
 * });
 * assert.equal(sentence.replaceAll("\u00a0", " "), "Age 4 years ÷ 4 + 3.5 = 4.5 mm.");
 * ```
 */
export function describeLookupStep(step: LookupStep, catalogue: LookupCatalogue = ENGLISH_LOOKUP): string {
  const sentence = catalogue.step[step.step] as (step: LookupStep) => string;
  return sentence(step);
}

/**
 * The sum behind a size or a normal sign, for brackets: "age 4 years ÷ 4 + 3.5"; empty where it is no sum.
 *
 * ```ts
 * import { describeLookupRule } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const working = [{ step: "linear", by: "tube", value: 5, times: 3, result: 15, unit: "cm" }] as const;
 * assert.equal(describeLookupRule(working).replaceAll("\u00a0", " "), "the tube 5.0 mm × 3");
 * ```
 */
export function describeLookupRule(
  working: readonly LookupStep[],
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  const sum = working.find((step) => step.step === "linear");
  return sum === undefined ? "" : catalogue.rule(sum);
}

/**
 * What the reader of a size or a normal sign must know, as one sentence.
 *
 * ```ts
 * import { describeLookupWarning } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.match(describeLookupWarning({ type: "newborn" }), /uncuffed tube is usual/);
 * ```
 */
export function describeLookupWarning(
  warning: LookupWarning,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  const sentence = catalogue.warning[warning.type] as (warning: LookupWarning) => string;
  return sentence(warning);
}

/**
 * Why there is no size or normal sign for this child, as one sentence.
 *
 * ```ts
 * import { describeLookupGap } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeLookupGap({ type: "needs", oneOf: ["age", "length"] }), "Needs age or length.");
 * ```
 */
export function describeLookupGap(gap: LookupGap, catalogue: LookupCatalogue = ENGLISH_LOOKUP): string {
  const sentence = catalogue.gap[gap.type] as (gap: LookupGap) => string;
  return sentence(gap);
}

/**
 * What a size or a normal sign rests on: "height-age and total weight"; empty where it rests on nothing of the child.
 *
 * ```ts
 * import { describeLookupRests } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeLookupRests(["height-age", "total-weight"]), "height-age and total weight");
 * ```
 */
export function describeLookupRests(
  rests: readonly LookupRest[],
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  return rests.map((rest) => catalogue.rest[rest]).join(catalogue.and);
}
