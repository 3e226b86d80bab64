import { type Centimetres, type Kilograms, kilograms } from "../units/index.ts";

/**
 * Lean body mass in kg by Peters 2011, made on children to 13-14 years:
 * 3.8 x extracellular volume, with volume = 0.0215 x weight^0.6469 x height^0.7236 (kg, cm).
 *
 * Never more than the total weight, which the formula would pass for a very thin tall child. Inputs:
 * `totalKg`; `lengthCm`, lying length or standing height as measured (0.7 cm of difference change the result
 * by less than 1 %). Throws a `RangeError` unless both are greater than 0.
 *
 * @source peters2011
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { leanWeight } from "@steelyard/core/body";
 * import { centimetres, kilograms } from "@steelyard/core/units";
 *
 * const leanKg = leanWeight({ totalKg: kilograms(40), lengthCm: centimetres(153) });
 * assert.ok(Math.abs(leanKg - 33.84) < 0.005);
 * ```
 */
export function leanWeight({
  totalKg,
  lengthCm,
}: {
  readonly totalKg: Kilograms;
  readonly lengthCm: Centimetres;
}): Kilograms {
  if (!(totalKg > 0 && lengthCm > 0)) {
    throw new RangeError(
      `Cannot compute lean weight as totalKg and lengthCm must be greater than 0: current values are ${totalKg} and ${lengthCm}`,
    );
  }
  const extracellularVolumeL = 0.0215 * totalKg ** 0.6469 * lengthCm ** 0.7236;
  return kilograms(Math.min(3.8 * extracellularVolumeL, totalKg));
}
