/**
 * P(T <= t) of Student's t distribution with an even number of degrees of freedom, by its finite series:
 * 1/2 + sin/2 (1 + cos^2/2 + 1·3 cos^4/(2·4) + …), with tan = t / sqrt(df) and df/2 terms.
 *
 * Throws a `RangeError` when t is not a number or df is not an even integer >= 2.
 *
 * @source abramowitz1964 26.7.4
 */
export function studentCumulative({ t, df }: { t: number; df: number }): number {
  if (Number.isNaN(t))
    throw new RangeError(`Cannot compute a probability as t must be a number: current value is ${t}`);
  if (!Number.isInteger(df) || df < 2 || df % 2 !== 0) {
    throw new RangeError(
      `Cannot compute a probability as df must be an even integer >= 2: current value is ${df}`,
    );
  }
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0;
  const cosine2 = df / (df + t * t);
  const sine = t / Math.sqrt(df + t * t);
  let term = 1;
  let sum = 1;
  for (let k = 1; k < df / 2; k++) {
    term *= (cosine2 * (2 * k - 1)) / (2 * k);
    sum += term;
  }
  return Math.min(Math.max((1 + sine * sum) / 2, 0), 1);
}

/** Density of Student's t distribution at t, for an even df >= 2. */
export function studentDensity({ t, df }: { t: number; df: number }): number {
  return densityConstant(df) * (1 + (t * t) / df) ** (-(df + 1) / 2);
}

/** Gamma((df + 1)/2) / (sqrt(df pi) Gamma(df/2)), by the ratio of neighbours from df = 2, where it is 1/sqrt(8). */
function densityConstant(df: number): number {
  let ratio = Math.sqrt(Math.PI) / 2; // Gamma(3/2) / Gamma(1)
  for (let k = 2; k < df; k += 2) ratio *= (k + 1) / k;
  return ratio / Math.sqrt(df * Math.PI);
}

/** The t with P(T <= t) = probability, by bisection to 1e-12; for probabilities strictly between 0 and 1. */
export function studentQuantile({ probability, df }: { probability: number; df: number }): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(
      `Cannot give a quantile as probability must be in (0, 1): current value is ${probability}`,
    );
  }
  let low = -1e6;
  let high = 1e6;
  while (high - low > 1e-12 * Math.max(1, Math.abs(low))) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (studentCumulative({ t: middle, df }) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
