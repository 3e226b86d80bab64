import type { DosingWarning, RobustnessOmitted, Unavailable } from "../dosing/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { ENGLISH_DOSING } from "./english-dosing.ts";

/** What the reader of a dose must know, as one sentence. */
export function describeDosingWarning(
  warning: DosingWarning,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.warning[warning.type] as (warning: DosingWarning) => string;
  return sentence(warning);
}

/** Why a use has no dose for this child, as one sentence. */
export function describeUnavailable(
  reason: Unavailable,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  const sentence = catalogue.unavailable[reason.type] as (reason: Unavailable) => string;
  return sentence(reason);
}

/** Why a dose has no robustness, as one sentence. */
export function describeRobustnessOmitted(
  reason: RobustnessOmitted,
  catalogue: DosingCatalogue = ENGLISH_DOSING,
): string {
  return catalogue.robustnessOmitted[reason];
}
