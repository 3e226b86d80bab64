import type { UnitSymbol } from "@steelyard/core/entry";

/** Millimetres, grams and days in one of each unit; a month is a twelfth of 365.25 days. @source nist-handbook-44 @source who-anthro */
const SIZE: Readonly<Record<UnitSymbol, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  ft: 304.8,
  g: 1,
  kg: 1000,
  oz: 453.59237 / 16,
  lb: 453.59237,
  d: 1,
  w: 7,
  mo: 30.4375,
  y: 365.25,
};

/** How many `to` one `from` is. */
export function unitFactor({ from, to }: { readonly from: UnitSymbol; readonly to: UnitSymbol }): number {
  return from === to ? 1 : SIZE[from] / SIZE[to];
}

export function kgOf(value: number, unit: UnitSymbol): number {
  return value * unitFactor({ from: unit, to: "kg" });
}
