import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import { checkCounts, type PairedCounts } from "./paired-counts.ts";

/** Two-sided p values of McNemar's test. */
export interface McNemar {
  readonly exactP: number;
  /** Half of the probability of what was seen is taken off: less conservative. */
  readonly midP: number;
  /** (b - c)^2 / (b + c), without continuity correction. */
  readonly chiSquared: number;
  readonly asymptoticP: number;
}

/**
 * McNemar's test that two methods are within a limit equally often in the same children: exact, mid-p and asymptotic.
 *
 * Only the children on whom they differ count: b of b + c is binomial with 1/2.
 *
 * `counts`: whole numbers from 0, not all 0; a `RangeError` otherwise. Without a child on whom they differ p is 1.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { mcnemar } from "@steelyard/study/comparison";
 *
 * const { exactP, midP } = mcnemar({ both: 59, onlyFirst: 6, onlySecond: 16, neither: 80 });
 * assert.equal(exactP.toFixed(4), "0.0525");
 * assert.ok(midP < exactP);
 * ```
 *
 * @source mcnemar1947
 * @source fagerland2013
 */
export function mcnemar(counts: PairedCounts): McNemar {
  checkCounts("test by McNemar", counts);
  const differing = counts.onlyFirst + counts.onlySecond;
  if (differing === 0) return { exactP: 1, midP: 1, chiSquared: 0, asymptoticP: 1 };
  const fewer = Math.min(counts.onlyFirst, counts.onlySecond);
  const { below, at } = halfBinomial(fewer, differing);
  const chiSquared = (counts.onlyFirst - counts.onlySecond) ** 2 / differing;
  return {
    exactP: Math.min(1, 2 * (below + at)),
    midP: Math.min(1, 2 * below + at),
    chiSquared,
    asymptoticP: 2 * normalCumulative(-Math.sqrt(chiSquared), 0, 1),
  };
}

/** P(X < k) and P(X = k) of X binomial (n, 1/2), summed from logarithms so that no n overflows. */
function halfBinomial(k: number, n: number): { below: number; at: number } {
  let logTerm = -n * Math.LN2;
  let below = 0;
  for (let i = 0; i < k; i++) {
    below += Math.exp(logTerm);
    logTerm += Math.log((n - i) / (i + 1));
  }
  return { below, at: Math.exp(logTerm) };
}
