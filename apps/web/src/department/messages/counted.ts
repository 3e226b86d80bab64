import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";

/** A number as French writes it. */
export function frenchNumber(value: number): string {
  return formatNumber(value, FRENCH_NUMBERS);
}

/** "1 cas", "2 enfants": 0 and 1 are singular. */
export function frenchCount(value: number, one: string, many: string): string {
  return `${frenchNumber(value)} ${FRENCH_NUMBERS.plural(value) === "one" ? one : many}`;
}
