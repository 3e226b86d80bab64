import { divide, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import type { Portion } from "./formulary.ts";
import { pumpRate } from "./prepare-infusion.ts";
import type { FluidPortion } from "./sheet-line.ts";
import type { WorkingStep } from "./working-step.ts";

/** A fluid in the parts that its source gives: mL, hours, and the rate that a pump can be set to. */
export function fluidPortions(
  totalMl: Rational,
  portions: readonly Portion[],
): { readonly portions: readonly FluidPortion[]; readonly steps: readonly WorkingStep[] } {
  const dose = { amount: toNumber(totalMl), unit: "mL" } as const;
  const parts = portions.map(({ share, overH }) => {
    const ml = multiply(totalMl, exactly(share));
    const rate = divide(ml, exactly(overH));
    const part = { ml: toNumber(ml), overH, mlPerH: toNumber(pumpRate(rate)) };
    const sharePercent = toNumber(multiply(exactly(share), fraction(100, 1)));
    return { part, step: { step: "portion", dose, sharePercent, ...part } as const };
  });
  return { portions: parts.map(({ part }) => part), steps: parts.map(({ step }) => step) };
}
