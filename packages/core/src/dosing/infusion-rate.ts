import { conversionFactor } from "../units/convert-dose.ts";
import type { Dose } from "../units/index.ts";
import { divide, exactly, multiply, type Rational, toNumber } from "../units/rational.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { Concentration, PerTime } from "./working-step.ts";

export interface InfusionArithmetic {
  /** The weight that is multiplied, kg, above 0. */
  readonly kg: number;
  readonly per: PerTime;
  readonly concentration: Concentration;
}

const PER_HOUR: Readonly<Record<PerTime, Rational>> = { min: exactly(60), h: exactly(1) };

/** mL/h that give one unit of dose per kg and time, from a concentration in that unit. */
export function mlPerHPerDose(
  per: PerTime,
  { kg, amountPerMl }: { readonly kg: Rational; readonly amountPerMl: Rational },
): Rational {
  return divide(multiply(kg, PER_HOUR[per]), amountPerMl);
}

/**
 * The rate in mL/h that gives a dose per kg and time.
 *
 * rate = dose x kg (x 60 when the dose is per minute) / concentration, to twelve digits and not yet rounded to a pump.
 * Throws a `RangeError` unless kg and the concentration are positive, a `TypeError` when the units are of different kinds.
 *
 * ```ts
 * import { infusionRateMlPerH } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * const concentration = { amountPerMl: 0.06, unit: "mg" } as const;
 * assert.equal(infusionRateMlPerH({ perKg: { amount: 0.1, unit: "microgram" }, per: "min", kg: 20, concentration }), 2);
 * ```
 */
export function infusionRateMlPerH({
  perKg,
  ...arithmetic
}: InfusionArithmetic & { readonly perKg: Dose }): number {
  return withoutDrift(finite(perKg.amount, "perKg.amount") * ratePerDose(arithmetic, perKg.unit));
}

/**
 * The dose per kg and time that a rate in mL/h gives, in the unit asked for: the inverse of `infusionRateMlPerH`.
 *
 * Throws a `RangeError` unless kg and the concentration are positive, a `TypeError` when the units are of different kinds.
 *
 * ```ts
 * import { infusionDose } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * const concentration = { amountPerMl: 0.06, unit: "mg" } as const;
 * const dose = infusionDose({ mlPerH: 2, unit: "microgram", per: "min", kg: 20, concentration });
 * assert.deepEqual(dose, { amount: 0.1, unit: "microgram", per: "kg/min" });
 * ```
 */
export function infusionDose({
  mlPerH,
  unit,
  ...arithmetic
}: InfusionArithmetic & { readonly mlPerH: number; readonly unit: Dose["unit"] }): Dose {
  const amount = withoutDrift(finite(mlPerH, "mlPerH") / ratePerDose(arithmetic, unit));
  return { amount, unit, per: `kg/${arithmetic.per}` };
}

/** As `mlPerHPerDose`, for numbers of any length. */
function ratePerDose({ kg, per, concentration }: InfusionArithmetic, unit: Dose["unit"]): number {
  const perMl =
    concentration.amountPerMl * toNumber(conversionFactor({ from: concentration.unit, to: unit }));
  const factor = (kg * toNumber(PER_HOUR[per])) / perMl;
  if (!(kg > 0 && perMl > 0 && factor > 0 && Number.isFinite(factor))) {
    throw new RangeError(
      `Cannot calculate an infusion as kg and amountPerMl must be positive: current values are ${kg} and ${concentration.amountPerMl}`,
    );
  }
  return factor;
}

function finite(value: number, name: string): number {
  if (Number.isFinite(value)) return value;
  throw new RangeError(`Cannot calculate an infusion as ${name} must be finite: current value is ${value}`);
}
