import { compare, exactly, type Rational } from "../units/rational.ts";
import { writtenKg } from "../units/written-kg.ts";
import type { SettlingMeasurement } from "./settling-measurement.ts";
import type { Basis, Weights } from "./weights.ts";

/** What the engine knows of the child, with weights as they are written in the working. */
export interface ChildFacts {
  readonly kgByBasis: Readonly<Partial<Record<Basis, Rational>>> & { readonly total: Rational };
  readonly ageMonths?: number;
  readonly lengthCm?: number;
  readonly burnPercent?: Rational;
  readonly cumulative?: (kg: number) => number;
  readonly settles: readonly SettlingMeasurement[];
}

/** Heavier than anyone ever weighed in a child; anything above is a mistake of the caller. */
const HIGHEST_KG = 1000;

/** The weight that enters the arithmetic, as it is written. */
function exactKg(kg: number, name: string, measured: boolean): Rational {
  if (!(kg > 0 && kg <= HIGHEST_KG)) {
    throw new RangeError(
      `Cannot compute a sheet as ${name} must be in (0, ${HIGHEST_KG}]: current value is ${kg}`,
    );
  }
  return exactly(writtenKg(kg, { measured }));
}

export function childFacts({
  weights,
  ageMonths,
  lengthCm,
  burnPercent,
  settles = [],
}: {
  readonly weights: Weights;
  readonly ageMonths?: number | undefined;
  readonly lengthCm?: number | undefined;
  readonly burnPercent?: number | undefined;
  readonly settles?: readonly SettlingMeasurement[] | undefined;
}): ChildFacts {
  for (const { measurement, halfWidthPercent } of settles) {
    if (halfWidthPercent > 0 && halfWidthPercent < Number.POSITIVE_INFINITY) continue;
    throw new RangeError(
      `Cannot compute a sheet as halfWidthPercent of ${measurement} must be positive: current value is ${halfWidthPercent}`,
    );
  }
  if (ageMonths !== undefined && !(ageMonths >= 0 && ageMonths < Number.POSITIVE_INFINITY)) {
    throw new RangeError(
      `Cannot compute a sheet as ageMonths must be at least 0: current value is ${ageMonths}`,
    );
  }
  if (lengthCm !== undefined && !(lengthCm > 0 && lengthCm < 300)) {
    throw new RangeError(
      `Cannot compute a sheet as lengthCm must be in (0, 300): current value is ${lengthCm}`,
    );
  }
  if (burnPercent !== undefined && !(burnPercent > 0 && burnPercent <= 100)) {
    throw new RangeError(
      `Cannot compute a sheet as burnPercent must be in (0, 100]: current value is ${burnPercent}`,
    );
  }
  const { totalKg, idealKg, adjustedKg, leanKg, cumulative } = weights;
  return {
    kgByBasis: {
      total: exactKg(totalKg, "totalKg", cumulative === undefined),
      ...(idealKg !== undefined && { ideal: exactKg(idealKg, "idealKg", false) }),
      ...(adjustedKg !== undefined && { adjusted: exactKg(adjustedKg, "adjustedKg", false) }),
      ...(leanKg !== undefined && { lean: exactKg(leanKg, "leanKg", false) }),
    },
    ...(ageMonths !== undefined && { ageMonths }),
    ...(lengthCm !== undefined && { lengthCm }),
    ...(burnPercent !== undefined && { burnPercent: exactly(burnPercent) }),
    ...(cumulative !== undefined && { cumulative }),
    settles,
  };
}

/** Whether value lies in [low, high); a missing edge is open. */
export function isWithin(value: Rational, low: number | undefined, high: number | undefined): boolean {
  return (
    (low === undefined || compare(value, exactly(low)) >= 0) &&
    (high === undefined || compare(value, exactly(high)) < 0)
  );
}
