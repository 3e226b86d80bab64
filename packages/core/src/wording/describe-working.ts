import type { WorkingStep } from "../dosing/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { ENGLISH_DOSING } from "./english-dosing.ts";

/**
 * One step of the arithmetic as one sentence: "10 micrograms/kg × 28.1 kg total = 281 micrograms."
 *
 * ```ts
 * import { describeWorking } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const sentence = describeWorking({
 *   step: "per-kg",
 *   perKg: { amount: 10, unit: "microgram", per: "kg" },
 *   basis: "total",
 *   kg: 28.1,
 *   result: { amount: 281, unit: "microgram" },
 * });
 * assert.equal(sentence.replaceAll("\u00a0", " "), "10 micrograms/kg × 28.1 kg total = 281 micrograms.");
 * ```
 */
export function describeWorking(step: WorkingStep, catalogue: DosingCatalogue = ENGLISH_DOSING): string {
  const sentence = catalogue.step[step.step] as (step: WorkingStep) => string;
  return sentence(step);
}
