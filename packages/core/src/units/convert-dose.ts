import type { Dose, DoseUnit } from "./dose.ts";
import { exactly, fraction, multiply, type Rational, toNumber } from "./rational.ts";
import { withoutDrift } from "./without-drift.ts";

/** Nanograms in one of it, exact by the definition of the prefixes. Units of other kinds convert to nothing. */
const NANOGRAMS: Partial<Record<DoseUnit, number>> = { g: 1e9, mg: 1e6, microgram: 1e3, nanogram: 1 };

/**
 * Whether amounts in the two units can be compared: both mass, or the same unit.
 *
 * ```ts
 * import { isConvertible } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.ok(isConvertible("mg", "microgram"));
 * assert.ok(!isConvertible("mg", "mL"));
 * ```
 */
export function isConvertible(from: DoseUnit, to: DoseUnit): boolean {
  return from === to || (NANOGRAMS[from] !== undefined && NANOGRAMS[to] !== undefined);
}

/** How many of `to` make one of `from`, exactly. Throws a `TypeError` when the two are of different kinds. */
export function conversionFactor({ from, to }: { from: DoseUnit; to: DoseUnit }): Rational {
  if (from === to) return { numerator: 1, denominator: 1 };
  const numerator = NANOGRAMS[from];
  const denominator = NANOGRAMS[to];
  if (numerator === undefined || denominator === undefined) {
    throw new TypeError(
      `Cannot convert a dose as units must be of one kind: current units are ${from} and ${to}`,
    );
  }
  return fraction(numerator, denominator);
}

/**
 * The same dose in another unit, exact to twelve digits.
 *
 * Throws a `TypeError` when the units are of different kinds
 * (mass, mmol, unit, mL, J): nothing here knows a molar mass or a density.
 *
 * ```ts
 * import { convertDose } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.deepEqual(convertDose({ dose: { amount: 0.3, unit: "mg" }, to: "microgram" }), { amount: 300, unit: "microgram" });
 * ```
 */
export function convertDose({ dose, to }: { dose: Dose; to: DoseUnit }): Dose {
  const amount = toNumber(
    multiply(exactly(withoutDrift(dose.amount)), conversionFactor({ from: dose.unit, to })),
  );
  return { ...dose, amount, unit: to };
}
