import { conditionWeight } from "./condition-weight.ts";
import type { FoundIndex } from "./find-index.ts";
import { indexNodes } from "./index-nodes.ts";
import type { BodyAt } from "./indexed-model.ts";
import type { Sex } from "./measurements.ts";
import type { NamedObservation } from "./observe-measurements.ts";
import { shiftPopulation } from "./shift-population.ts";
import type { SiteProfile } from "./site-profile.ts";
import type { WeightComponent } from "./weight-estimate.ts";

/**
 * The weight as one component for each sex and each length the child may really have, as likely as it explains the observations.
 *
 * `bodies` are those of `sexes` at the index itself; `share` is what the components add to.
 */
export function conditionOnNodes(given: {
  found: FoundIndex;
  sexes: readonly Sex[];
  bodies: readonly BodyAt[];
  kept: readonly NamedObservation[];
  site: SiteProfile;
  wholeBody: number;
  share: number;
}): readonly WeightComponent[] {
  const { found, sexes, bodies, kept, site, wholeBody } = given;
  const { residual } = found.model;
  const observations = kept.map(({ observation }) => observation);
  const nodes = indexNodes({ index: found.value, sd: found.sd });
  const logOdds: number[] = [];
  const components: Mutable<WeightComponent>[] = [];
  let largest = Number.NEGATIVE_INFINITY;
  for (const node of nodes) {
    for (let i = 0; i < sexes.length; i++) {
      const at =
        node.index === found.value ? (bodies[i] as BodyAt) : found.model.at(sexes[i] as Sex, node.index);
      const conditioned = conditionWeight({ at, observations, residual });
      const { zMean, zScale } = shiftPopulation(conditioned, site.population);
      const curve = at.curve("weight");
      const own = conditioned.logDensity + Math.log(Math.max(at.share, 1e-12) * node.weight);
      largest = Math.max(largest, own);
      logOdds.push(own);
      components.push({
        probability: 0,
        curve: wholeBody === 1 ? curve : { ...curve, logMedian: curve.logMedian + Math.log(wholeBody) },
        zMean,
        zScale,
        tailDf: conditioned.tailDf,
      });
    }
  }
  let total = 0;
  for (const own of logOdds) total += Math.exp(own - largest);
  components.forEach((component, i) => {
    component.probability = (given.share * Math.exp((logOdds[i] as number) - largest)) / total;
  });
  return components;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
