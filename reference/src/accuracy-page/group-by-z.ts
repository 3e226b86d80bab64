import type { Placed } from "./regression-to-the-mean.ts";

const edges = [-3, -2, -1, 0, 1, 2, 3] as const;

export interface ZGroup {
  readonly name: string;
  readonly n: number;
  /** Mean of (estimate - true) / true, %; undefined for nobody. */
  readonly meanError: number | undefined;
}

/** Children in groups of weight for length, by their true weight or by the estimate. */
export function groupByZ(placed: readonly Placed[], by: "trueZ" | "estimateZ"): readonly ZGroup[] {
  return [Number.NEGATIVE_INFINITY, ...edges].map((low, i) => {
    const high = edges[i] ?? Number.POSITIVE_INFINITY;
    const own = placed.filter((child) => child[by] >= low && child[by] < high);
    return {
      name: i === 0 ? `below ${high}` : Number.isFinite(high) ? `${low} to ${high}` : `above ${low}`,
      n: own.length,
      meanError: own.length === 0 ? undefined : own.reduce((sum, { error }) => sum + error, 0) / own.length,
    };
  });
}
