import { type EntryField, FIELD_UNIT, type UnitSymbol } from "../entry/index.ts";

const UNITS: Partial<Record<EntryField, UnitSymbol>> = FIELD_UNIT;

/** "136.5": to the hundredth at most, with a leading and without a trailing zero. */
export function writeValue(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** "136.5 cm": a measurement in the unit of its field. */
export function writeMeasurement({ field, value }: { field: EntryField; value: number }): string {
  return `${writeValue(value)} ${UNITS[field] ?? ""}`.trimEnd();
}

/** "18 to 310 cm". */
export function writeRange({ field, low, high }: { field: EntryField; low: number; high: number }): string {
  return `${writeValue(low)} to ${writeMeasurement({ field, value: high })}`;
}
