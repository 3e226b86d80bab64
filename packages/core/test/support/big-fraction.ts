/** Fractions of whole numbers without bound, for checks that share nothing with the arithmetic under test. */
export interface BigFraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** The number as it is written in decimals. */
export function big(value: number): BigFraction {
  const [mantissa = "0", exponent = "0"] = value.toExponential().split("e");
  const [whole = "0", decimals = ""] = mantissa.split(".");
  const power = Number(exponent) - decimals.length;
  const digits = BigInt(whole + decimals);
  return power >= 0
    ? { over: digits * 10n ** BigInt(power), under: 1n }
    : { over: digits, under: 10n ** BigInt(-power) };
}

export const times = (a: BigFraction, b: BigFraction): BigFraction => ({
  over: a.over * b.over,
  under: a.under * b.under,
});

export const by = (a: BigFraction, b: BigFraction): BigFraction => ({
  over: a.over * b.under,
  under: a.under * b.over,
});

export const plus = (a: BigFraction, b: BigFraction): BigFraction => ({
  over: a.over * b.under + b.over * a.under,
  under: a.under * b.under,
});

/** Below, at or above 0 as a is less than, equal to or more than b. */
export function order(a: BigFraction, b: BigFraction): number {
  const difference = a.over * b.under - b.over * a.under;
  return difference === 0n ? 0 : difference > 0n ? 1 : -1;
}

/** Whether a number is the fraction, to the last digits that a number holds. */
export function isNumber(value: number, exact: BigFraction): boolean {
  const scale = 10n ** 40n;
  const wanted = Number((exact.over * scale) / exact.under) / 1e40;
  return Math.abs(value - wanted) <= 4 * Number.EPSILON * Math.abs(wanted);
}

/** Whether the fraction is a whole multiple of the step. */
export function isMultiple(value: BigFraction, step: BigFraction): boolean {
  return (value.over * step.under) % (value.under * step.over) === 0n;
}
