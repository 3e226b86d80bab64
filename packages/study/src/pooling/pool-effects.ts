import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import studentCumulative from "@stdlib/stats-base-dists-t-cdf";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import type { Interval } from "../accuracy/interval.ts";
import { betweenVariance } from "./between-variance.ts";
import type { StudyEffect } from "./study-effect.ts";

export interface PoolOptions {
  /** How the variance between sites is estimated; restricted likelihood when absent. */
  readonly between?: "reml" | "dersimonian-laird";
  /** Interval by Hartung and Knapp (t, k - 1), advisable with few sites; true when absent. */
  readonly hartungKnapp?: boolean;
}

/** Effects pooled with a variance between sites. */
export interface PooledEffect {
  readonly sites: number;
  readonly pooled: Interval;
  readonly standardError: number;
  /** Two-sided p of effect 0. */
  readonly p: number;
  /** Where the true effect of a new site would lie; absent below 3 sites. */
  readonly prediction?: { readonly low: number; readonly high: number };
  /** Variance and SD between sites. */
  readonly tauSquared: number;
  readonly tau: number;
  /** Share of the variance that is between sites, %. */
  readonly iSquaredPercent: number;
  /** Cochran's Q, k - 1 degrees of freedom. */
  readonly q: number;
  /** Share of each site in the pooled effect, adding up to 1. */
  readonly shares: readonly number[];
}

/**
 * Random-effects pooling of effects of several sites, on their own scale (for shares: logits).
 *
 * weights 1 / (v_i + tau^2); tau^2 by restricted maximum likelihood or DerSimonian-Laird; I^2 = tau^2 / (tau^2 + typical v); prediction
 * interval by Higgins and others: t with k - 2.
 *
 * `effects`: at least 2, finite, variances positive; a `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { poolEffects } from "@steelyard/study/pooling";
 *
 * const { pooled } = poolEffects([{ effect: 1, variance: 0.1 }, { effect: 3, variance: 0.1 }]);
 * assert.equal(pooled.value, 2);
 * ```
 *
 * @source dersimonian-laird-1986
 * @source viechtbauer2005
 * @source hartung-knapp-2001
 * @source higgins2009
 */
export function poolEffects(
  effects: readonly StudyEffect[],
  { between = "reml", hartungKnapp = true }: PoolOptions = {},
): PooledEffect {
  const k = effects.length;
  if (k < 2) throw new RangeError(`Cannot pool as there must be at least 2 sites: current value is ${k}`);
  for (const { effect, variance } of effects)
    if (!Number.isFinite(effect) || !(variance > 0 && Number.isFinite(variance)))
      throw new RangeError(
        `Cannot pool as effects must be finite and variances positive: current value is ${effect}, ${variance}`,
      );
  const { tauSquared, q, typicalVariance } = betweenVariance(effects, between);
  const weights = effects.map(({ variance }) => 1 / (variance + tauSquared));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const value = effects.reduce((sum, { effect }, i) => sum + (weights[i] as number) * effect, 0) / total;
  const scatter = effects.reduce(
    (sum, { effect }, i) => sum + (weights[i] as number) * (effect - value) ** 2,
    0,
  );
  const standardError = Math.sqrt((hartungKnapp ? scatter / (k - 1) : 1) / total);
  const quantile = hartungKnapp ? studentQuantile(0.975, k - 1) : normalQuantile(0.975, 0, 1);
  const ratio = standardError > 0 ? Math.abs(value) / standardError : Number.MAX_SAFE_INTEGER;
  const spread = Math.sqrt(tauSquared + standardError ** 2);
  return {
    sites: k,
    pooled: { value, low: value - quantile * standardError, high: value + quantile * standardError },
    standardError,
    p: 2 * (hartungKnapp ? studentCumulative(-ratio, k - 1) : normalCumulative(-ratio, 0, 1)),
    ...(k > 2 && {
      prediction: {
        low: value - studentQuantile(0.975, k - 2) * spread,
        high: value + studentQuantile(0.975, k - 2) * spread,
      },
    }),
    tauSquared,
    tau: Math.sqrt(tauSquared),
    iSquaredPercent: (100 * tauSquared) / (tauSquared + typicalVariance),
    q,
    shares: weights.map((weight) => weight / total),
  };
}
