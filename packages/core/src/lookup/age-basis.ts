import { heightAge, type Sex } from "../growth/index.ts";
import { centimetres } from "../units/index.ts";
import type { LookupAnswer, LookupWarning } from "./lookup-answer.ts";
import type { LookupStep } from "./lookup-step.ts";

/** The age of the child, or the age that goes with its length where that is all there is. */
export type AgeBasis =
  | { readonly from: "age"; readonly ageMonths: number }
  | {
      readonly from: "height-age";
      readonly ageMonths: number;
      readonly lengthCm: number;
      /** The length is beyond the median at birth or at 19 years, so the age is only known to lie beyond. */
      readonly bound?: "at-least" | "at-most";
    };

/** The end of the medians that a height-age is read from. @source who-growth-2007, height for age */
const OLDEST_MONTHS = 228;

export function ageBasis({
  ageMonths,
  lengthCm,
  sex,
}: {
  readonly ageMonths: number | undefined;
  readonly lengthCm: number | undefined;
  readonly sex: Sex | undefined;
}): AgeBasis | undefined {
  if (ageMonths !== undefined) return { from: "age", ageMonths };
  if (lengthCm === undefined) return undefined;
  const found = heightAge({ lengthCm: centimetres(lengthCm), ...(sex !== undefined && { sex }) });
  if (found.ok) return { from: "height-age", ageMonths: toHundredth(found.value), lengthCm };
  return lengthCm < found.error.low
    ? { from: "height-age", ageMonths: 0, lengthCm, bound: "at-most" }
    : { from: "height-age", ageMonths: OLDEST_MONTHS, lengthCm, bound: "at-least" };
}

/** What an answer by age rests on, and the step that made the age where it was not given. */
export function ageParts(age: AgeBasis): Pick<LookupAnswer<unknown>, "rests" | "working"> {
  if (age.from === "age") return { rests: ["age"], working: [] };
  const step: LookupStep = { step: "height-age", ...heightAgeOf(age) };
  return { rests: ["height-age"], working: [step] };
}

/** The mark on every line that used a height-age. */
export function ageWarnings(age: AgeBasis): readonly LookupWarning[] {
  return age.from === "age" ? [] : [{ type: "height-age", ...heightAgeOf(age) }];
}

function heightAgeOf({ lengthCm, ageMonths, bound }: Extract<AgeBasis, { from: "height-age" }>): {
  lengthCm: number;
  ageMonths: number;
  bound?: "at-least" | "at-most";
} {
  return { lengthCm, ageMonths, ...(bound !== undefined && { bound }) };
}

/** Years as they stand in the working, to the hundredth. */
export function yearsOf({ ageMonths }: AgeBasis): number {
  return toHundredth(ageMonths / 12);
}

function toHundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
