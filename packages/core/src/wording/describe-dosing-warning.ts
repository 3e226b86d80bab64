import type { DosingWarning, RobustnessOmitted, TrackingWarning, Unavailable } from "../dosing/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { ENGLISH_DOSING } from "./english-dosing.ts";

/**
 * What the reader of a dose must know, as one sentence.
 *
 * ```ts
 * import { describeDosingWarning } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const sentence = describeDosingWarning({
 *   type: "limited",
 *   by: "single-maximum",
 *   from: { amount: 1.2, unit: "mg" },
 *   to: { amount: 1, unit: "mg" },
 * });
 * assert.match(sentence, /^Held at the single maximum of 1\u00a0mg/);
 * ```
 */
export function describeDosingWarning(
  warning: DosingWarning,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.warning[warning.type] as (warning: DosingWarning) => string;
  return sentence(warning);
}

/**
 * Why a use has no dose for this child, as one sentence.
 *
 * ```ts
 * import { describeUnavailable } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const sentence = describeUnavailable({ type: "weight-missing", basis: "ideal" });
 * assert.equal(sentence, "No dose: it goes by ideal weight, which needs a length.");
 * ```
 */
export function describeUnavailable(
  reason: Unavailable,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.unavailable[reason.type] as (reason: Unavailable) => string;
  return sentence(reason);
}

/**
 * What is wrong with the doses given so far, as one sentence.
 *
 * ```ts
 * import { describeTrackingWarning } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const warning = { type: "too-soon", lineId: "adrenaline.arrest", atMinutes: 2, earliestMinutes: 3 } as const;
 * assert.equal(describeTrackingWarning(warning), "Given 1\u00a0min before it was due.");
 * ```
 */
export function describeTrackingWarning(
  warning: TrackingWarning,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.tracking[warning.type] as (warning: TrackingWarning) => string;
  return sentence(warning);
}

/**
 * Why a dose has no robustness, as one sentence.
 *
 * ```ts
 * import { describeRobustnessOmitted } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeRobustnessOmitted("weight-measured"), "The weight was read from a scale.");
 * ```
 */
export function describeRobustnessOmitted(
  reason: RobustnessOmitted,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  return catalogue.robustnessOmitted[reason];
}
