import { compare, type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import type { Settlement } from "./dosing-warning.ts";
import type { LimitedDose } from "./limited-dose.ts";
import type { AcceptedRange } from "./rule.ts";
import type { SettlingMeasurement } from "./settling-measurement.ts";
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
  const probabilityOutside = Math.min(1, Math.max(0, tooMuch + tooLittle));
  const settledBy =
    probabilityOutside > ROBUST_BELOW
      ? settlement({ dose, accepted, kg: toNumber(limited.kg), isAtMinimum, isAtMaximum }, child.settles)
      : undefined;
  return {
    robustness: {
      probabilityOutside,
      acceptedLowPerKg: lowPerKg,
      acceptedHighPerKg: highPerKg,
      ...(settledBy && { settledBy }),
    },
  };
}

/**
 * The first of the measurements at hand that would bring the probability under the threshold.
 *
 * What the tape will read is not known, only how wide the range will be; so the weight is taken to stay where it is,
 * log-normal with the expected half-width, and the dose with it.
 */
function settlement(
  {
    dose,
    accepted: { lowPerKg, highPerKg },
    kg,
    isAtMinimum,
    isAtMaximum,
  }: {
    readonly dose: number;
    readonly accepted: AcceptedRange;
    readonly kg: number;
    readonly isAtMinimum: boolean;
    readonly isAtMaximum: boolean;
  },
  settles: readonly SettlingMeasurement[],
): Settlement | undefined {
  for (const { measurement, halfWidthPercent } of settles) {
    const logSd = Math.log1p(halfWidthPercent / 100) / TWO_SIDED_95;
    const below = (weightKg: number): number => normalBelow(Math.log(weightKg / kg) / logSd);
    const tooMuch = isAtMinimum ? 0 : below(dose / highPerKg);
    const tooLittle = isAtMaximum ? 0 : 1 - below(dose / lowPerKg);
    const probabilityOutside = Math.max(0, tooMuch + tooLittle);
    if (probabilityOutside <= ROBUST_BELOW) return { measurement, probabilityOutside };
  }
  return undefined;
}

/** Standard deviations from the middle of a normal distribution to either end of its 95 % range. @source fisher1915 */
const TWO_SIDED_95 = 1.959_963_985;

/** P(Z <= z) of the standard normal, within 7.5e-8. @source abramowitz1964, 26.2.17 */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.231_641_9 * Math.abs(z));
  const series =
    t *
    (0.319_381_53 + t * (-0.356_563_782 + t * (1.781_477_937 + t * (-1.821_255_978 + t * 1.330_274_429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return z > 0 ? 1 - tail : tail;
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
