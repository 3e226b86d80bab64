import { type Kilograms, kilograms } from "../units/index.ts";

/** Share of the weight above ideal that is taken to carry drug; in use for adults and children with obesity. */
const shareOfExcess = 0.4;

/**
 * Adjusted body weight in kg: ideal + 0.4 (total - ideal).
 *
 * For a child lighter than ideal it lies between the two as well; such a child is dosed on total weight, which
 * is the business of the dose rule. Throws a `RangeError` unless both weights are greater than 0.
 *
 * @source jaacc-2021, Table 2
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { adjustedWeight } from "@steelyard/core/body";
 * import { kilograms } from "@steelyard/core/units";
 *
 * assert.equal(adjustedWeight({ totalKg: kilograms(60), idealKg: kilograms(40) }), 48);
 * ```
 */
export function adjustedWeight({
  totalKg,
  idealKg,
}: {
  readonly totalKg: Kilograms;
  readonly idealKg: Kilograms;
}): Kilograms {
  if (!(totalKg > 0 && idealKg > 0)) {
    throw new RangeError(
      `Cannot compute adjusted weight as totalKg and idealKg must be greater than 0: current values are ${totalKg} and ${idealKg}`,
    );
  }
  return kilograms(idealKg + shareOfExcess * (totalKg - idealKg));
}
