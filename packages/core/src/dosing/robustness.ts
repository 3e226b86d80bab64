import { compare, type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import type { LimitedDose } from "./limited-dose.ts";
import type { AcceptedRange } from "./rule.ts";
import type { Robustness, RobustnessOmitted } from "./sheet-line.ts";

/** A dose that lies outside its accepted range with more than this probability is warned of. */
export const ROBUST_BELOW = 0.05;

/**
 * P(the dose as drawn up lies outside the accepted range per kg of the child's true total weight).
 *
 * With D the dose given, [a, b] the accepted range per kg and F the distribution of weight, a true weight w is
 * served as long as a w <= D <= b w, so the probability is F(D / b) + 1 - F(D / a). The limits of the rule bound
 * the accepted range as well: a dose at the single maximum is never too small, one at the minimum never too large.
 */
export function doseRobustness({
  given,
  limited,
  accepted,
  child,
}: {
  readonly given: Rational;
  readonly limited: LimitedDose;
  readonly accepted: AcceptedRange | undefined;
  readonly child: ChildFacts;
}): { readonly robustness: Robustness } | { readonly robustnessOmitted: RobustnessOmitted } {
  if (limited.basis !== "total") return { robustnessOmitted: "basis-not-total" };
  if (accepted === undefined) return { robustnessOmitted: "no-accepted-range" };
  const { cumulative } = child;
  if (cumulative === undefined) return { robustnessOmitted: "weight-measured" };
  const { lowPerKg, highPerKg } = accepted;
  const dose = toNumber(given);
  const { isAtMinimum, isAtMaximum } = limitsReached(given, limited);
  const tooMuch = isAtMinimum ? 0 : probability(cumulative, dose / highPerKg);
  const tooLittle = isAtMaximum ? 0 : 1 - probability(cumulative, dose / lowPerKg);
  return {
    robustness: {
      probabilityOutside: Math.min(1, Math.max(0, tooMuch + tooLittle)),
      acceptedLowPerKg: lowPerKg,
      acceptedHighPerKg: highPerKg,
    },
  };
}

function probability(cumulative: (kg: number) => number, kg: number): number {
  const value = cumulative(kg);
  if (!(value >= -1e-9 && value <= 1 + 1e-9)) {
    throw new RangeError(
      `Cannot judge a dose as cumulative(${kg}) must be in [0, 1]: current value is ${value}`,
    );
  }
  return value;
}

/** Whether a dose per kg of the weight used falls outside the accepted range for another reason than a limit. */
export function isOutsideAccepted({
  given,
  limited,
  accepted,
}: {
  readonly given: Rational;
  readonly limited: LimitedDose;
  readonly accepted: AcceptedRange;
}): boolean {
  const perKg = toNumber(given) / toNumber(limited.kg);
  const { isAtMinimum, isAtMaximum } = limitsReached(given, limited);
  return (
    (perKg < accepted.lowPerKg * (1 - 1e-9) && !isAtMaximum) ||
    (perKg > accepted.highPerKg * (1 + 1e-9) && !isAtMinimum)
  );
}

/** Also where rounding has moved the dose off the limit that set it. */
function limitsReached(
  given: Rational,
  { limitedBy, maximum, minimum }: LimitedDose,
): { isAtMaximum: boolean; isAtMinimum: boolean } {
  return {
    isAtMaximum: limitedBy === "single-maximum" || (maximum !== undefined && compare(given, maximum) >= 0),
    isAtMinimum: limitedBy === "minimum" || (minimum !== undefined && compare(given, minimum) <= 0),
  };
}
