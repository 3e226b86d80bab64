import type { Residual } from "./body-reference.ts";
import { boxCoxLogValue } from "./box-cox.ts";
import type { BodyAt } from "./indexed-model.ts";
import type { NamedObservation } from "./observe-measurements.ts";
import { ObservedNormal } from "./observed-normal.ts";
import { tailOf } from "./tail.ts";

/** Below this predictive probability an observation and the others do not belong to the same child. */
const conflictP = 0.005;
/** Expected values are told as the range that holds 99 of 100. */
const z99 = 2.5758;

/** An observation that the others say is not of this child. */
export interface Conflict {
  readonly observation: NamedObservation;
  /** Two-sided predictive probability given the others. */
  readonly p: number;
  /** What the others would have expected, in the unit of the model. */
  readonly low: number;
  readonly high: number;
}

/** Observations that belong to one child. */
export interface Alternative {
  readonly kept: readonly NamedObservation[];
  /** Their joint normal for each of the bodies. */
  readonly normals: readonly ObservedNormal[];
}

export interface Settled {
  /** What the estimate may rest on: one set, or two where two measurements contradict each other and nothing says which is wrong. */
  readonly alternatives: readonly Alternative[];
  readonly conflicts: readonly Conflict[];
}

/**
 * Takes out what conflicts with the rest, one at a time: the least trusted first, then the least likely. Where two equally trusted
 * measurements contradict each other, each is an alternative: the estimate then is one or the other, and not something between that
 * neither says.
 *
 * An observation is judged by the others, so one alone is never in conflict; an unusual child is not an error.
 */
export function setAsideConflicts(given: {
  bodies: readonly BodyAt[];
  observations: readonly NamedObservation[];
  residual: Residual;
}): Settled {
  const { bodies, residual } = given;
  const alternative = (kept: readonly NamedObservation[]): Alternative => {
    const observations = kept.map(({ observation }) => observation);
    return { kept, normals: bodies.map((at) => new ObservedNormal(at, observations)) };
  };
  let current = alternative(given.observations);
  const conflicts: Conflict[] = [];
  while (!areCoherent(current, residual)) {
    const { kept } = current;
    const judged = judgeAll(current, residual);
    const suspects = judged.filter(({ p }) => p < conflictP);
    if (suspects.length === 0) break;
    if (kept.length === 2 && kept[0]?.trust === kept[1]?.trust) {
      return { alternatives: kept.map((own) => alternative([own])), conflicts: [...conflicts, ...judged] };
    }
    // A tape must not give way to a word: where the least trusted is not itself the suspect, it may be what makes the suspect look so.
    const least = Math.min(...kept.map(({ trust }) => trust));
    const ofLeast = suspects.filter(({ observation }) => observation.trust === least);
    const pool =
      ofLeast.length > 0 ? ofLeast : judged.filter(({ observation }) => observation.trust === least);
    const worst = pool.reduce((a, b) => (b.p < a.p ? b : a));
    conflicts.push(worst);
    current = alternative(kept.filter((observation) => observation !== worst.observation));
  }
  if (conflicts.length < 2) return { alternatives: [current], conflicts };
  // Takes back, in order of entry, what was taken out for another's sake and agrees with those that stayed.
  const stillOut = conflicts.filter((conflict) => {
    const tried = alternative([...current.kept, conflict.observation]);
    if (!areCoherent(tried, residual) && judgeAll(tried, residual).some(({ p }) => p < conflictP))
      return true;
    current = tried;
    return false;
  });
  return { alternatives: [current], conflicts: stillOut };
}

/** Whether no observation of any of the bodies is unlikely: true of nearly all children, and cheaper to know than how likely each is. */
function areCoherent({ kept, normals }: Alternative, residual: Residual): boolean {
  if (kept.length < 2) return true;
  const limit = (tailOf(residual.tailDf).quantile(conflictP / 2) * residual.scale) ** 2;
  for (const normal of normals) {
    for (let i = 0; i < kept.length; i++) {
      const { excess, variance } = normal.leaveOneOut(i);
      if (excess * excess > limit * variance) return false;
    }
  }
  return true;
}

/** Each observation judged by all the others. */
function judgeAll({ kept, normals }: Alternative, { tailDf, scale }: Residual): readonly Conflict[] {
  const { cumulative } = tailOf(tailDf);
  return kept.map((observation, i) => {
    const parts = normals.map((normal) => {
      const { at } = normal;
      const { excess, variance } = normal.leaveOneOut(i);
      const { z, logDensity } = normal.without(i);
      const sd = Math.sqrt(variance) * scale;
      const curve = at.curve(observation.observation.quantity);
      return {
        weight: at.share * Math.exp(logDensity),
        p: 2 * cumulative(-Math.abs(excess) / sd),
        low: Math.exp(boxCoxLogValue(curve, z - excess - z99 * sd)),
        high: Math.exp(boxCoxLogValue(curve, z - excess + z99 * sd)),
      };
    });
    const total = parts.reduce((sum, { weight }) => sum + weight, 0);
    return {
      observation,
      p: parts.reduce((sum, part) => sum + part.p * (total > 0 ? part.weight / total : 1 / parts.length), 0),
      low: Math.min(...parts.map(({ low }) => low)),
      high: Math.max(...parts.map(({ high }) => high)),
    };
  });
}
