import { normalCumulative } from "./normal-cumulative.ts";

/**
 * The z with P(Z <= z) = probability, to the last bits, by bisection of `normalCumulative` and a Newton step.
 *
 * Throws a `RangeError` when the probability is not strictly between 0 and 1.
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(
      `Cannot give a quantile as probability must be in (0, 1): current value is ${probability}`,
    );
  }
  // The lower tail has no cancellation: the upper one is its mirror image.
  if (probability > 0.5) return -normalQuantile(1 - probability);
  let low = -38;
  let high = 0;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (normalCumulative(middle) < probability) low = middle;
    else high = middle;
  }
  const z = (low + high) / 2;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return z + (probability - normalCumulative(z)) / density;
}
