import { withoutDrift } from "../units/without-drift.ts";
import type { EntryField, QuantityField } from "./entry-field.ts";

export type UnitSymbol = "mm" | "cm" | "m" | "in" | "ft" | "g" | "kg" | "oz" | "lb" | "d" | "w" | "mo" | "y";

type Dimension = "length" | "mass" | "time";

interface Unit {
  readonly dimension: Dimension;
  /** Exact size: in millimetres, grams or days. */
  readonly size: number;
  /** Spellings a person may type, lower case. */
  readonly spellings: readonly string[];
}

const POUND_G = 453.59237;
const DAYS_PER_MONTH = 30.4375;

/**
 * Every unit that may be typed, with its exact size.
 *
 * Inch 25.4 mm and pound 453.59237 g are exact by definition; a month is a twelfth of 365.25 days, as in the
 * WHO growth standards.
 *
 * @source nist-handbook-44 Appendix C, section 4
 * @source who-anthro age in months = days / 30.4375
 */
const UNITS: Readonly<Record<UnitSymbol, Unit>> = {
  mm: {
    dimension: "length",
    size: 1,
    spellings: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
  },
  cm: {
    dimension: "length",
    size: 10,
    spellings: ["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"],
  },
  m: { dimension: "length", size: 1000, spellings: ["m", "metre", "metres", "meter", "meters"] },
  in: { dimension: "length", size: 25.4, spellings: ["in", "ins", "inch", "inches", '"', "″", "”", "''"] },
  ft: { dimension: "length", size: 304.8, spellings: ["ft", "foot", "feet", "'", "′", "’"] },
  g: { dimension: "mass", size: 1, spellings: ["g", "gm", "gram", "grams", "gramme", "grammes"] },
  kg: {
    dimension: "mass",
    size: 1000,
    spellings: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"],
  },
  oz: { dimension: "mass", size: POUND_G / 16, spellings: ["oz", "ounce", "ounces"] },
  lb: { dimension: "mass", size: POUND_G, spellings: ["lb", "lbs", "pound", "pounds"] },
  d: { dimension: "time", size: 1, spellings: ["d", "day", "days", "j", "jour", "jours"] },
  w: {
    dimension: "time",
    size: 7,
    spellings: ["w", "wk", "wks", "week", "weeks", "sem", "semaine", "semaines"],
  },
  mo: {
    dimension: "time",
    size: DAYS_PER_MONTH,
    spellings: ["mo", "mos", "m", "mth", "mths", "month", "months", "mois"],
  },
  y: {
    dimension: "time",
    size: 12 * DAYS_PER_MONTH,
    spellings: ["y", "yr", "yrs", "year", "years", "an", "ans"],
  },
};

/** The unit each field is kept in. */
export const FIELD_UNIT: Readonly<Record<QuantityField, UnitSymbol>> = {
  lengthCm: "cm",
  standingHeightCm: "cm",
  ulnaCm: "cm",
  kneeHeightCm: "cm",
  tibiaCm: "cm",
  armMm: "mm",
  waistCm: "cm",
  thighCm: "cm",
  calfCm: "cm",
  headCm: "cm",
  ageMonths: "mo",
  carerKg: "kg",
  earlierKg: "kg",
  earlierAgeMonths: "mo",
  scaleKg: "kg",
};

/**
 * Whether the field holds an age: it is said in years as often as in months, so the unit must be known.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { isAge } from "@steelyard/core/entry";
 *
 * assert.ok(isAge("earlierAgeMonths") && !isAge("lengthCm"));
 * ```
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { isAge } from "@steelyard/core/entry";
 *
 * assert.equal(isAge("ageMonths"), true);
 * assert.equal(isAge("lengthCm"), false);
 * ```
 */
export function isAge(field: EntryField): boolean {
  return field === "ageMonths" || field === "earlierAgeMonths";
}

/** The units a field may be typed in, smallest first. */
export function acceptedUnits(field: QuantityField): readonly UnitSymbol[] {
  const { dimension } = UNITS[FIELD_UNIT[field]];
  return (Object.keys(UNITS) as UnitSymbol[]).filter((symbol) => UNITS[symbol].dimension === dimension);
}

/** The unit a spelling means in this field ("m" is metres of length but months of age); undefined if none. */
export function findUnit(field: QuantityField, spelling: string): UnitSymbol | undefined {
  const lower = spelling.toLowerCase();
  return acceptedUnits(field).find((symbol) => UNITS[symbol].spellings.includes(lower));
}

/** How many `small` make one `large`. */
export function unitRatio({ large, small }: { large: UnitSymbol; small: UnitSymbol }): number {
  return withoutDrift(UNITS[large].size / UNITS[small].size);
}

/** A value given in `from` as a value in the unit of the field. */
export function toFieldUnit({
  field,
  value,
  from,
}: {
  field: QuantityField;
  value: number;
  from: UnitSymbol;
}): number {
  const to = FIELD_UNIT[field];
  return from === to ? value : withoutDrift((value * UNITS[from].size) / UNITS[to].size);
}
