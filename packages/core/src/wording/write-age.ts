import { formatNumber } from "../units/index.ts";
import { ENGLISH_VALUES, type ValueWords } from "./value-words.ts";

/** "15 days", "9 months", "3 years", "2 years 6 months"; part months to one decimal. */
export function writeAge(months: number, { numbers, age }: ValueWords = ENGLISH_VALUES): string {
  const count = (value: number, unit: keyof ValueWords["age"]): string =>
    `${formatNumber(value, numbers)}\u00a0${age[unit][numbers.plural(value)]}`;
  if (months > 0 && months < 2) return count(Math.round((months * 365.25) / 12), "day");
  if (months < 24) return count(Math.round(months * 10) / 10, "month");
  const whole = Math.floor(months);
  const rest = whole % 12;
  const years = count(Math.floor(whole / 12), "year");
  return rest === 0 ? years : `${years} ${count(rest, "month")}`;
}

/** "1 day", "3 years", in English. */
export function count(value: number, unit: string): string {
  return `${formatNumber(value)}\u00a0${unit}${value === 1 ? "" : "s"}`;
}
