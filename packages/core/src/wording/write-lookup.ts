import type { LookupQuantity, LookupUnit, LookupValue } from "../lookup/index.ts";
import { formatNumber, formatWeight } from "../units/index.ts";
import { writeAge } from "./write-age.ts";

/**
 * Internal diameter of a tube: "5.0 mm". The sizes of tubes are the one place where safe-medication rules allow a
 * trailing zero. @source ismp-abbreviations
 */
export function writeTubeMm(mm: number): string {
  return `${formatNumber(mm)}${Number.isInteger(mm) ? ".0" : ""}\u00a0mm`;
}

/** "6 to 8", "20": a value or a range without its unit. */
export function writeSpan(value: LookupValue): string {
  return typeof value === "number"
    ? formatNumber(value)
    : `${formatNumber(value.low)} to ${formatNumber(value.high)}`;
}

/** "12 cm", "450 to 500 mL", "8 Fr", "size 2.5", "20 to 30 per minute". */
export function writeLookupValue({
  value,
  unit,
  perMinute,
}: {
  readonly value: LookupValue;
  readonly unit: LookupUnit;
  readonly perMinute: string;
}): string {
  if (unit === "size") return `size\u00a0${writeSpan(value)}`;
  return `${writeSpan(value)}\u00a0${unit === "/min" ? perMinute : unit}`;
}

/** A value of what a rule goes by, in its unit: "9 years", "136 cm", "28.4 kg", "5.0 mm". */
export function writeQuantity(by: LookupQuantity, value: number): string {
  switch (by) {
    case "age":
      return writeAge(value);
    case "length":
      return `${formatNumber(value)}\u00a0cm`;
    case "total-weight":
    case "ideal-weight":
      return formatWeight(value);
    case "arm":
      return `${formatNumber(value)}\u00a0mm`;
    case "tube":
      return writeTubeMm(value);
  }
}
