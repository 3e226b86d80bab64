import { ok, type Result } from "../result.ts";
import type { Kilograms } from "../units/index.ts";
import { adjustedWeight } from "./adjusted-weight.ts";
import { cumulativeWeight, type EstimateOptions, estimateWeight } from "./estimate-weight.ts";
import { idealWeight } from "./ideal-weight.ts";
import { leanWeight } from "./lean-weight.ts";
import type { Measurements } from "./measurements.ts";
import type { BodyIssue, WeightEstimate } from "./weight-estimate.ts";

/** Every weight of one child that a rule may go by, kg; absent where it is not known. */
export interface ChildWeights {
  readonly totalKg: Kilograms;
  readonly idealKg?: Kilograms;
  readonly adjustedKg?: Kilograms;
  readonly leanKg?: Kilograms;
  /** Probability that the true total weight is at most `kg`; absent where it was read from a scale. */
  readonly cumulative?: (kg: number) => number;
}

/** A child that has a weight, and what that weight was made of. */
export interface EstimatedChild {
  readonly measurements: Measurements;
  /** The total weight as a distribution. */
  readonly estimate: WeightEstimate;
  /** What the dose rules may ask for. */
  readonly weights: ChildWeights;
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
 * import { weighChild } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const child = weighChild({ measurements: { lengthCm: centimetres(136), armMm: millimetres(190) } });
 * assert.ok(child.ok && child.value.weights.totalKg === child.value.estimate.totalKg);
 * ```
 */
export function weighChild({
  measurements,
  ...options
}: EstimateOptions & { readonly measurements: Measurements }): Result<EstimatedChild, BodyIssue> {
  const estimate = estimateWeight(measurements, options);
  if (!estimate.ok) return estimate;
  return ok({ measurements, estimate: estimate.value, weights: weightsOf(estimate.value, measurements) });
}

/** The weights that the dose rules may ask for; the distribution only where the total is an estimate. */
function weightsOf(estimate: WeightEstimate, { sex, ageMonths }: Measurements): ChildWeights {
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
