import type { FitChild } from "./fit-child.ts";

/** Nothing is gained by counting one child as many. */
const least = 0.3;
const most = 3;

/**
 * How much each child of a part of the population must count for the part to be as heavy as the whole.
 *
 * Thigh and calf were measured in the first cycles only, when children were lighter: left as they are, a thigh of a child today would
 * look large for its length, and so would its weight. Given the weight, who had a thigh measured is taken to be chance: each child counts as
 * the ratio of the normal densities of its z of weight in the whole (0, 1) and in the part.
 *
 * `zOfWeight`: one per child of the part, on the weight curve of the whole.
 */
export function populationWeights(
  children: readonly FitChild[],
  zOfWeight: (child: FitChild) => number,
): (child: FitChild) => number {
  const scores = children.map(zOfWeight);
  const mean = scores.reduce((sum, z) => sum + z, 0) / scores.length;
  const sd = Math.sqrt(scores.reduce((sum, z) => sum + (z - mean) ** 2, 0) / scores.length);
  return (child) => {
    const z = zOfWeight(child);
    const ratio = sd * Math.exp((((z - mean) / sd) ** 2 - z ** 2) / 2);
    return Math.min(Math.max(ratio, least), most);
  };
}
