import { type Centimetres, type Kilograms, type SquareMetres, squareMetres } from "../units/index.ts";

/**
 * Body surface area in square metres by Mosteller: sqrt(length x weight / 3600) (cm, kg).
 *
 * Inputs: `totalKg`; `lengthCm`, lying length or standing height as measured. Throws a `RangeError` unless both
 * are greater than 0.
 *
 * @source who-pocket-book-2013, Annex 2
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { bodySurfaceArea } from "@steelyard/core/body";
 * import { centimetres, kilograms } from "@steelyard/core/units";
 *
 * const area = bodySurfaceArea({ totalKg: kilograms(10), lengthCm: centimetres(72) });
 * assert.ok(Math.abs(area - 0.45) < 0.005);
 * ```
 */
export function bodySurfaceArea({
  totalKg,
  lengthCm,
}: {
  readonly totalKg: Kilograms;
  readonly lengthCm: Centimetres;
}): SquareMetres {
  if (!(totalKg > 0 && lengthCm > 0)) {
    throw new RangeError(
      `Cannot compute body surface area as totalKg and lengthCm must be greater than 0: current values are ${totalKg} and ${lengthCm}`,
    );
  }
  return squareMetres(Math.sqrt((lengthCm * totalKg) / 3600));
}
