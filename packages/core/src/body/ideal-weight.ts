import { err, ok, type Result } from "../result.ts";
import { type Centimetres, type Kilograms, kilograms, type Months } from "../units/index.ts";
import {
  atMillimetre,
  type IdealWeightCurves,
  idealWeightCurves,
  shortestCm,
  tallestCm,
  weightAtAge,
} from "./ideal-weight-curves.ts";
import type { Sex } from "./measurements.ts";
import type { BodyIssue } from "./weight-estimate.ts";

/** The length or the age lies outside the range of ideal weight. */
export type IdealWeightIssue = Extract<BodyIssue, { readonly type: "measurement-out-of-range" }>;

const oldestMonths = 240;

/**
 * Ideal weight in kg: the median weight of healthy children of this length.
 *
 * Lying length to 120 cm: the WHO 2006 median weight for length (to 110 cm) or for height (length - 0.7 cm).
 * Above: the WHO 2007 median body mass index x height^2, at the child's age, or at the height-age when the age
 * is unknown; past the last median height the index at 19 years. Ages under 61 months take the index of
 * 61 months, ages over 228 that of 228. From 120 to 137 cm the first rule fades into the second. Sex unknown:
 * the mean of both. Rises with length, nowhere faster than its fifth power.
 *
 * Inputs: `lengthCm`, lying length, 45 to 205 cm; `sex` and `ageMonths` (0 to 240) when known. Gives kg, or
 * `measurement-out-of-range` with the range. Throws a `RangeError` on NaN.
 *
 * @source who-growth-2006, weight for length and for height
 * @source who-growth-2007, height and body mass index for age
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { idealWeight } from "@steelyard/core/body";
 * import { centimetres, months } from "@steelyard/core/units";
 *
 * const boy = idealWeight({ lengthCm: centimetres(138.4795), sex: "m", ageMonths: months(120) });
 * assert.ok(boy.ok && Math.abs(boy.value - 31.21) < 0.005);
 *
 * const tooShort = idealWeight({ lengthCm: centimetres(44.9) });
 * assert.ok(!tooShort.ok && tooShort.error.low === 45);
 * ```
 */
export function idealWeight({
  lengthCm,
  sex,
  ageMonths,
}: {
  readonly lengthCm: Centimetres;
  readonly sex?: Sex | undefined;
  readonly ageMonths?: Months | undefined;
}): Result<Kilograms, IdealWeightIssue> {
  if (!Number.isFinite(lengthCm) || !Number.isFinite(ageMonths ?? 0)) {
    throw new RangeError(
      `Cannot compute ideal weight as lengthCm and ageMonths must be finite numbers: current values are ${lengthCm} and ${ageMonths}`,
    );
  }
  if (sex !== undefined && sex !== "m" && sex !== "f") {
    throw new RangeError(`Cannot compute ideal weight as sex must be "m" or "f": current value is ${sex}`);
  }
  if (lengthCm < shortestCm || lengthCm > tallestCm) {
    return outOfRange("lengthCm", lengthCm, shortestCm, tallestCm);
  }
  if (ageMonths !== undefined && (ageMonths < 0 || ageMonths > oldestMonths)) {
    return outOfRange("ageMonths", ageMonths, 0, oldestMonths);
  }
  if (sex !== undefined) return ok(kilograms(idealKg(idealWeightCurves(sex), lengthCm, ageMonths)));
  const boyKg = idealKg(idealWeightCurves("m"), lengthCm, ageMonths);
  const girlKg = idealKg(idealWeightCurves("f"), lengthCm, ageMonths);
  return ok(kilograms((boyKg + girlKg) / 2));
}

function idealKg(curves: IdealWeightCurves, lengthCm: number, ageMonths: number | undefined): number {
  return ageMonths === undefined
    ? atMillimetre(curves.weightKg, lengthCm)
    : weightAtAge(curves, lengthCm, ageMonths);
}

function outOfRange(
  measurement: IdealWeightIssue["measurement"],
  value: number,
  low: number,
  high: number,
): Result<never, IdealWeightIssue> {
  return err({ type: "measurement-out-of-range", measurement, value, low, high });
}
