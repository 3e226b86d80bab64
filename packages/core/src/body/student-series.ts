export interface StudentSeries {
  /** P(T <= t). */
  readonly cumulative: (t: number) => number;
  readonly density: (t: number) => number;
}

/**
 * Student's t distribution with an even number of degrees of freedom, by its finite series:
 * P(T <= t) = 1/2 + sin/2 (1 + cos^2/2 + 1·3 cos^4/(2·4) + …), with tan = t / sqrt(df) and df/2 terms.
 *
 * Throws a `RangeError` when df is not an even integer >= 2; its functions throw one when t is not a number.
 *
 * @source abramowitz1964 26.7.4
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { studentSeries } from "@steelyard/core/body";
 *
 * assert.ok(Math.abs(studentSeries(10).cumulative(2.228) - 0.975) < 1e-4);
 * ```
 */
export function studentSeries(df: number): StudentSeries {
  if (!Number.isInteger(df) || df < 2 || df % 2 !== 0) {
    throw new RangeError(
      `Cannot make Student's t as df must be an even integer >= 2: current value is ${df}`,
    );
  }
  const terms = df / 2;
  const coefficients = new Float64Array(terms).fill(1);
  for (let k = 1; k < terms; k++) coefficients[k] = ((coefficients[k - 1] as number) * (2 * k - 1)) / (2 * k);
  // Gamma((df + 1)/2) / (sqrt(df pi) Gamma(df/2)), climbing from Gamma(3/2) / Gamma(1).
  let gammaRatio = Math.sqrt(Math.PI) / 2;
  for (let k = 2; k < df; k += 2) gammaRatio *= (k + 1) / k;
  const peak = gammaRatio / Math.sqrt(df * Math.PI);
  return {
    cumulative(t) {
      if (Number.isNaN(t)) {
        throw new RangeError(`Cannot compute a probability as t must be a number: current value is ${t}`);
      }
      if (!Number.isFinite(t)) return t > 0 ? 1 : 0;
      const square = df + t * t;
      const cosine2 = df / square;
      let sum = coefficients[terms - 1] as number;
      for (let k = terms - 2; k >= 0; k--) sum = sum * cosine2 + (coefficients[k] as number);
      return Math.min(Math.max((1 + (t / Math.sqrt(square)) * sum) / 2, 0), 1);
    },
    density(t) {
      if (Number.isNaN(t)) {
        throw new RangeError(`Cannot compute a density as t must be a number: current value is ${t}`);
      }
      const cosine2 = df / (df + t * t);
      let power = peak * Math.sqrt(cosine2);
      for (let k = 0; k < terms; k++) power *= cosine2;
      return power;
    },
  };
}
