import type { LookupQuantity, LookupUnit, LookupValue } from "../lookup/index.ts";
import { formatNumber, formatWeight } from "../units/index.ts";
import { ENGLISH_VALUES, type ValueWords } from "./value-words.ts";
import { writeAge } from "./write-age.ts";

/**
 * Internal diameter of a tube: "5.0 mm". The sizes of tubes are the one place where safe-medication rules allow a
 * trailing zero. @source ismp-abbreviations
 */
export function writeTubeMm(mm: number, { numbers }: ValueWords = ENGLISH_VALUES): string {
  return `${formatNumber(mm, numbers)}${Number.isInteger(mm) ? `${numbers.decimalMark}0` : ""}\u00a0mm`;
}

/** "6 to 8", "20": a value or a range without its unit. */
export function writeSpan(value: LookupValue, { numbers, span }: ValueWords = ENGLISH_VALUES): string {
  return typeof value === "number"
    ? formatNumber(value, numbers)
    : span(formatNumber(value.low, numbers), formatNumber(value.high, numbers));
}

/** "12 cm", "450 to 500 mL", "8 Fr", "size 2.5", "20 to 30 per minute". */
export function writeLookupValue(
  {
    value,
    unit,
    perMinute,
  }: { readonly value: LookupValue; readonly unit: LookupUnit; readonly perMinute: string },
  words: ValueWords = ENGLISH_VALUES,
): string {
  if (unit === "size") return words.size(writeSpan(value, words));
  return `${writeSpan(value, words)}\u00a0${unit === "/min" ? perMinute : unit}`;
}

/** A value of what a rule goes by, in its unit: "9 years", "136 cm", "28.4 kg", "5.0 mm". */
export function writeQuantity(by: LookupQuantity, value: number, words: ValueWords = ENGLISH_VALUES): string {
  switch (by) {
    case "age":
      return writeAge(value, words);
    case "length":
      return `${formatNumber(value, words.numbers)}\u00a0cm`;
    case "total-weight":
    case "ideal-weight":
      return formatWeight(value, words.numbers);
    case "arm":
      return `${formatNumber(value, words.numbers)}\u00a0mm`;
    case "tube":
      return writeTubeMm(value, words);
  }
}
