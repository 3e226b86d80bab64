import {
  type Centimetres,
  type Kilograms,
  type KilogramsPerSquareMetre,
  kilogramsPerSquareMetre,
} from "../units/index.ts";

/**
 * Body mass index in kg/m2: weight / (height in metres)^2.
 *
 * `heightCm` is standing height from 2 years on, lying length before (see `statureForTables`). Throws a
 * `RangeError` unless both are greater than 0.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { bodyMassIndex } from "@steelyard/core/growth";
 * import { centimetres, kilograms } from "@steelyard/core/units";
 *
 * assert.equal(bodyMassIndex({ weightKg: kilograms(18), heightCm: centimetres(120) }), 12.5);
 * ```
 */
export function bodyMassIndex({
  weightKg,
  heightCm,
}: {
  readonly weightKg: Kilograms;
  readonly heightCm: Centimetres;
}): KilogramsPerSquareMetre {
  if (!(weightKg > 0 && heightCm > 0)) {
    throw new RangeError(
      `Cannot compute body mass index as weightKg and heightCm must be greater than 0: current values are ${weightKg} and ${heightCm}`,
    );
  }
  return kilogramsPerSquareMetre((weightKg * 10_000) / heightCm ** 2);
}
