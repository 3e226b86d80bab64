import { FIELD_UNIT, type UnitSymbol } from "../entry/index.ts";
import { formatNumber } from "../units/index.ts";
import type { FieldName } from "./message-catalogue.ts";
import { ENGLISH_VALUES, type ValueWords } from "./value-words.ts";

const UNITS: Partial<Record<FieldName, UnitSymbol>> = {
  ...FIELD_UNIT,
  ulnaCm: "cm",
  kneeHeightCm: "cm",
  tibiaCm: "cm",
  armStepMm: "mm",
};

/** "136.5": to the hundredth at most. */
export function writeValue(value: number, { numbers }: ValueWords = ENGLISH_VALUES): string {
  return formatNumber(Math.round(value * 100) / 100, numbers);
}

/** "136.5 cm": a measurement in the unit of its field, with a no-break space between. */
export function writeMeasurement(
  { field, value }: { field: FieldName; value: number },
  words: ValueWords = ENGLISH_VALUES,
): string {
  const unit = UNITS[field];
  return unit === undefined ? writeValue(value, words) : `${writeValue(value, words)}\u00a0${unit}`;
}

/** "18 to 310 cm". */
export function writeRange(
  { field, low, high }: { field: FieldName; low: number; high: number },
  words: ValueWords = ENGLISH_VALUES,
): string {
  return words.span(writeValue(low, words), writeMeasurement({ field, value: high }, words));
}
