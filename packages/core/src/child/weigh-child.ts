import {
  adjustedWeight,
  type BodyIssue,
  type BodyModel,
  cumulativeWeight,
  estimateWeight,
  idealWeight,
  leanWeight,
  type Measurements,
  type SiteIdentity,
  type SiteProfile,
  type WeightEstimate,
} from "../body/index.ts";
import type { Weights } from "../dosing/index.ts";
import { ok, type Result } from "../result.ts";

/** A child that has a weight, and what that weight was made of. */
export interface WeighedChild {
  readonly measurements: Measurements;
  /** The total weight as a distribution. */
  readonly estimate: WeightEstimate;
  /** What the dose rules may ask for. */
  readonly weights: Weights;
}

export interface WeighingInput {
  readonly measurements: Measurements;
  /** The body model to use; the one that ships when absent. */
  readonly model?: BodyModel;
  /** The site's calibration and what it is known by, as `readSiteProfile` gives it; an uncalibrated site when absent. */
  readonly site?: SiteProfile & { readonly identity?: SiteIdentity };
}

/**
 * The weights of one child in kg, once, for every sheet that is made of them.
 *
 * total = the scale weight, or the median that the body model gives the measurements; ideal, adjusted and lean weight
 * from length and total. `measurements` as `estimateWeight` takes them; without a length the other weights are absent.
 * Returns a `BodyIssue` when no weight can be had; throws a `RangeError` on numbers that are not finite.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { weighChild } from "@steelyard/core/child";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const child = weighChild({ measurements: { lengthCm: centimetres(136), armMm: millimetres(190) } });
 * assert.ok(child.ok && child.value.weights.totalKg === child.value.estimate.totalKg);
 * ```
 */
export function weighChild({ measurements, model, site }: WeighingInput): Result<WeighedChild, BodyIssue> {
  const estimate = estimateWeight(measurements, { ...(model && { model }), ...(site && { site }) });
  if (!estimate.ok) return estimate;
  return ok({ measurements, estimate: estimate.value, weights: weightsOf(estimate.value, measurements) });
}

/** The weights that the dose rules may ask for; the distribution only where the total is an estimate. */
function weightsOf(estimate: WeightEstimate, { sex, ageMonths }: Measurements): Weights {
  const { totalKg, lengthCm, components } = estimate;
  const cumulative =
    components.length === 0 ? {} : { cumulative: (kg: number): number => cumulativeWeight(estimate, kg) };
  if (lengthCm === undefined) return { totalKg, ...cumulative };
  const leanKg = leanWeight({ totalKg, lengthCm });
  const ideal = idealWeight({ lengthCm, sex, ageMonths });
  if (!ideal.ok) return { totalKg, leanKg, ...cumulative };
  const idealKg = ideal.value;
  return { totalKg, idealKg, adjustedKg: adjustedWeight({ totalKg, idealKg }), leanKg, ...cumulative };
}
