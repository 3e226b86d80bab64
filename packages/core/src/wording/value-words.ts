import { ENGLISH_NUMBERS, type NumberStyle } from "../units/index.ts";

/** How one language writes ages, ranges and sizes within its sentences. */
export interface ValueWords {
  readonly numbers: NumberStyle;
  readonly span: (low: string, high: string) => string;
  readonly any: string;
  readonly from: (low: string) => string;
  readonly under: (high: string) => string;
  readonly fromToUnder: (low: string, high: string) => string;
  readonly age: Readonly<Record<"day" | "month" | "year", { readonly one: string; readonly other: string }>>;
  readonly size: (size: string) => string;
}

export const ENGLISH_VALUES: ValueWords = {
  numbers: ENGLISH_NUMBERS,
  span: (low, high) => `${low} to ${high}`,
  any: "any",
  from: (low) => `from ${low}`,
  under: (high) => `under ${high}`,
  fromToUnder: (low, high) => `from ${low} to under ${high}`,
  age: {
    day: { one: "day", other: "days" },
    month: { one: "month", other: "months" },
    year: { one: "year", other: "years" },
  },
  size: (size) => `size\u00a0${size}`,
};
