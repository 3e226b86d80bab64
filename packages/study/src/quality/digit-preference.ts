import { normalCumulative } from "@steelyard/core/body";

/** How often each last digit was read, and whether that can be chance. */
export interface DigitPreference {
  readonly values: number;
  /** Counts of 0 to 9. */
  readonly counts: readonly number[];
  /** Pearson's chi-squared against equal counts, 9 degrees of freedom. */
  readonly chiSquared: number;
  readonly p: number;
  /** 0 (even) to 100 (one digit only): 100 x sqrt(chi-squared / (9 n)). */
  readonly score: number;
}

/**
 * Preference for last digits of readings in steps of `step` (0.1 cm, 1 mm): Pearson's chi-squared test of equal counts and the score
 * 100 sqrt(chi2 / (n df)) of the MONICA project. Undefined when fewer than 50 readings are whole steps.
 *
 * @source kuulasmaa1998
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { digitPreference } from "@steelyard/study/quality";
 *
 * const even = digitPreference(Float64Array.from({ length: 100 }, (_, i) => 80 + i / 10), { step: 0.1 });
 * assert.ok(even !== undefined && even.score === 0 && even.p === 1);
 * ```
 */
export function digitPreference(
  values: Float64Array,
  { step }: { readonly step: number },
): DigitPreference | undefined {
  const counts = new Array<number>(10).fill(0);
  let n = 0;
  for (const value of values) {
    const steps = value / step;
    const whole = Math.round(steps);
    if (!(Math.abs(steps - whole) < 1e-6)) continue;
    counts[whole % 10] = (counts[whole % 10] as number) + 1;
    n++;
  }
  if (n < 50) return undefined;
  const chiSquared = counts.reduce((sum, count) => sum + (count - n / 10) ** 2 / (n / 10), 0);
  return {
    values: n,
    counts,
    chiSquared,
    p: chiSquaredTail9(chiSquared),
    score: 100 * Math.sqrt(chiSquared / (9 * n)),
  };
}

/**
 * P(chi-squared of 9 degrees of freedom > x), exact for odd degrees of freedom:
 * 2 (1 - Phi(sqrt x)) + 2 phi(sqrt x) (x^(1/2) + x^(3/2)/3 + x^(5/2)/15 + x^(7/2)/105).
 *
 * @source abramowitz1964 26.4.4
 */
export function chiSquaredTail9(x: number): number {
  const root = Math.sqrt(x);
  const density = Math.exp(-x / 2) / Math.sqrt(2 * Math.PI);
  const p = 2 * normalCumulative(-root) + 2 * density * root * (1 + (x / 3) * (1 + (x / 5) * (1 + x / 7)));
  return Math.min(1, p);
}
