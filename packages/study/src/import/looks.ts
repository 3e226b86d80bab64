import { HUMAN_LIMITS, type UnitSymbol } from "@steelyard/core/entry";
import { QUANTITY_FIELDS, type QuantityName, STUDY_UNIT } from "./study-field.ts";
import { kgOf, unitFactor } from "./unit-factor.ts";

/** Half of the children of a study lie well within these; in the unit of the field. */
const USUAL_MEDIAN: Readonly<Record<QuantityName, readonly [number, number]>> = {
  weightKg: [2, 90],
  lengthCm: [40, 190],
  standingHeightCm: [60, 190],
  statureCm: [40, 190],
  armMm: [70, 380],
  waistCm: [30, 110],
  thighCm: [15, 70],
  calfCm: [10, 45],
  headCm: [30, 60],
  ageMonths: [0, 240],
  carerKg: [2, 90],
};

const UNITS: Readonly<Record<"length" | "mass" | "time", readonly UnitSymbol[]>> = {
  length: ["cm", "mm", "in", "m"],
  mass: ["kg", "lb", "g"],
  time: ["mo", "y", "d"],
};

/** The units in which the numbers of a column have a usual median, the field's own first. */
export function likelyUnits(field: QuantityName, values: readonly number[]): readonly UnitSymbol[] {
  const own = STUDY_UNIT[field];
  const kind = own === "kg" ? "mass" : own === "mo" ? "time" : "length";
  const middle = medianOf(values);
  const largest = Math.max(...values);
  const [low, high] = USUAL_MEDIAN[field];
  const limit = HUMAN_LIMITS[QUANTITY_FIELDS[field]].high;
  const units = field === "armMm" ? (["mm", "cm", "in"] as const) : UNITS[kind];
  return units.filter((unit) => {
    const factor = unitFactor({ from: unit, to: own });
    const value = middle * factor;
    if (kind === "time") return unit === "d" ? largest > 300 : largest * factor <= limit * 1.05;
    return value >= low && value <= high;
  });
}

/** Share of the numbers that only make sense in another unit than the column's. */
export function otherUnit(
  field: QuantityName,
  unit: UnitSymbol,
  values: readonly number[],
): { readonly unit: UnitSymbol; readonly share: number } | undefined {
  const own = STUDY_UNIT[field];
  if (own === "mo") return undefined;
  const [low, high] = USUAL_MEDIAN[field];
  const { low: least, high: most } = HUMAN_LIMITS[QUANTITY_FIELDS[field]];
  const odd = values.filter(
    (value) =>
      value * unitFactor({ from: unit, to: own }) < least ||
      value * unitFactor({ from: unit, to: own }) > most,
  );
  if (odd.length < 3 || odd.length < 0.01 * values.length) return undefined;
  for (const other of own === "kg" ? UNITS.mass : UNITS.length) {
    const fits = odd.filter(
      (value) =>
        value * unitFactor({ from: other, to: own }) >= low / 1.5 &&
        value * unitFactor({ from: other, to: own }) <= high * 1.5,
    );
    if (other !== unit && fits.length > 0.8 * odd.length)
      return { unit: other, share: fits.length / values.length };
  }
  return undefined;
}

/** Whether a median weight and a median length can be of the same children: a body mass index of 10 to 35 kg/m2 (common practice). */
export function belongTogether(
  weight: { readonly median: number; readonly unit: UnitSymbol },
  length: { readonly median: number; readonly unit: UnitSymbol },
): boolean {
  const metres = (length.median * unitFactor({ from: length.unit, to: "cm" })) / 100;
  const index = kgOf(weight.median, weight.unit) / metres ** 2;
  return index >= 10 && index <= 35;
}

export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.POSITIVE_INFINITY;
}
