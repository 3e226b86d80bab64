import { boxCoxLogValue, type WeightComponent } from "@steelyard/core/body";

/** One weight drawn at random from the distribution of an estimate, kg. */
export function drawWeight(given: {
  components: readonly WeightComponent[];
  uniform: () => number;
  normal: () => number;
}): number {
  const { components, uniform, normal } = given;
  let left = uniform();
  const component = components.find(({ probability }) => {
    left -= probability;
    return left < 0;
  });
  const { curve, zMean, zScale, tailDf } = component ?? (components.at(-1) as WeightComponent);
  return Math.exp(boxCoxLogValue(curve, zMean + zScale * drawTail({ tailDf, normal })));
}

/** A normal over the root of a mean of squared normals is Student's t. @source abramowitz1964 26.7 */
function drawTail({ tailDf, normal }: { tailDf: number | undefined; normal: () => number }): number {
  const t = normal();
  if (tailDf === undefined) return t;
  let squares = 0;
  for (let i = 0; i < tailDf; i++) squares += normal() ** 2;
  return t / Math.sqrt(squares / tailDf);
}
