import { conditionWeight } from "./condition-weight.ts";
import type { FoundIndex } from "./find-index.ts";
import { indexNodes } from "./index-nodes.ts";
import type { Sex } from "./measurements.ts";
import { ObservedNormal } from "./observed-normal.ts";
import type { Alternative } from "./set-aside-conflicts.ts";
import { shiftPopulation } from "./shift-population.ts";
import type { SiteProfile } from "./site-profile.ts";
import type { WeightComponent } from "./weight-estimate.ts";

/**
 * The weight as one component for each sex and each length the child may really have, as likely as it explains the observations.
 *
 * The normals of the alternative are those of `sexes` at the index itself; `share` is what the components add to.
 */
export function conditionOnNodes(given: {
  found: FoundIndex;
  sexes: readonly Sex[];
  alternative: Alternative;
  site: SiteProfile;
  wholeBody: number;
  share: number;
}): readonly WeightComponent[] {
  const { found, sexes, site, wholeBody } = given;
  const { normals } = given.alternative;
  const { residual } = found.model;
  const nodes = indexNodes({ index: found.value, sd: found.sd });
  const components: Mutable<WeightComponent>[] = [];
  let largest = Number.NEGATIVE_INFINITY;
  for (const node of nodes) {
    for (let i = 0; i < sexes.length; i++) {
      const central = normals[i] as ObservedNormal;
      const normal =
        node.index === found.value
          ? central
          : new ObservedNormal(found.model.at(sexes[i] as Sex, node.index), central.observations);
      const { at } = normal;
      const conditioned = conditionWeight(normal, residual);
      const { zMean, zScale } = shiftPopulation(conditioned, site.population);
      const { curve } = conditioned;
      // ln of the odds for now, since one density may be too small to write beside another.
      const logOdds = conditioned.logDensity + Math.log(Math.max(at.share, 1e-12) * node.weight);
      largest = Math.max(largest, logOdds);
      components.push({
        probability: logOdds,
        curve: wholeBody === 1 ? curve : { ...curve, logMedian: curve.logMedian + Math.log(wholeBody) },
        zMean,
        zScale,
        tailDf: conditioned.tailDf,
      });
    }
  }
  let total = 0;
  for (const component of components) {
    component.probability = Math.exp(component.probability - largest);
    total += component.probability;
  }
  for (const component of components) component.probability *= given.share / total;
  return components;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
