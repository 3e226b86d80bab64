import { studentSeries } from "./student-series.ts";

/**
 * The t with P(T <= t) = probability, by bisection to the last bits, for an even number of degrees of freedom.
 *
 * Throws a `RangeError` when the probability is not strictly between 0 and 1, or df is not an even integer >= 2.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { studentQuantile } from "@steelyard/core/body";
 *
 * assert.ok(Math.abs(studentQuantile({ probability: 0.975, df: 10 }) - 2.228) < 0.0005);
 * ```
 */
export function studentQuantile({ probability, df }: { probability: number; df: number }): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(
      `Cannot give a quantile as probability must be in (0, 1): current value is ${probability}`,
    );
  }
  const { cumulative } = studentSeries(df);
  let low = -1;
  let high = 1;
  while (cumulative(low) > probability) low *= 2;
  while (cumulative(high) < probability) high *= 2;
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (cumulative(middle) < probability) low = middle;
    else high = middle;
  }
  return high;
}
