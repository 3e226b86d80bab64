import type { Residual } from "./body-reference.ts";
import { boxCoxLogValue, boxCoxSlope, boxCoxZ } from "./box-cox.ts";
import { conditionNormal, type Observation } from "./condition-normal.ts";
import type { BodyAt } from "./indexed-model.ts";
import type { NamedObservation } from "./observe-measurements.ts";
import { studentSeries } from "./student-series.ts";

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

export interface Settled {
  /** What the estimate may rest on: one set, or two where two measurements contradict each other and nothing says which is wrong. */
  readonly alternatives: readonly (readonly NamedObservation[])[];
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
  let kept = given.observations;
  const conflicts: Conflict[] = [];
  while (kept.length > 1) {
    const judged = judgeAll(given, kept);
    const suspects = judged.filter(({ p }) => p < conflictP);
    if (suspects.length === 0) break;
    if (kept.length === 2 && kept[0]?.trust === kept[1]?.trust) {
      return { alternatives: kept.map((observation) => [observation]), conflicts: [...conflicts, ...judged] };
    }
    // A tape must not give way to a word: where the least trusted is not itself the suspect, it may be what makes the suspect look so.
    const least = Math.min(...kept.map(({ trust }) => trust));
    const ofLeast = suspects.filter(({ observation }) => observation.trust === least);
    const pool =
      ofLeast.length > 0 ? ofLeast : judged.filter(({ observation }) => observation.trust === least);
    const worst = pool.reduce((a, b) => (b.p < a.p ? b : a));
    conflicts.push(worst);
    kept = kept.filter((observation) => observation !== worst.observation);
  }
  return restoreInnocent({ alternatives: [kept], conflicts }, (set) => judgeAll(given, set));
}

/** Takes back, in order of entry, what was taken out for another's sake and agrees with those that stayed. */
function restoreInnocent(
  settled: Settled,
  judgeSet: (set: readonly NamedObservation[]) => readonly Conflict[],
): Settled {
  let kept = settled.alternatives[0] ?? [];
  const conflicts = settled.conflicts.filter((conflict) => {
    const tried = [...kept, conflict.observation];
    if (settled.conflicts.length === 1 || judgeSet(tried).some(({ p }) => p < conflictP)) return true;
    kept = tried;
    return false;
  });
  return { alternatives: [kept], conflicts };
}

/** Each observation judged by all the others of the set. */
function judgeAll(
  given: { bodies: readonly BodyAt[]; residual: Residual },
  set: readonly NamedObservation[],
): readonly Conflict[] {
  const { bodies, residual } = given;
  return set.map((observation) => {
    const others = set.filter((other) => other !== observation).map((other) => other.observation);
    return judge({ bodies, observation, others, residual });
  });
}

function judge(given: {
  bodies: readonly BodyAt[];
  observation: NamedObservation;
  others: readonly Observation[];
  residual: Residual;
}): Conflict {
  const { bodies, others, residual } = given;
  const own = given.observation.observation;
  const tail = studentSeries(residual.tailDf);
  const parts = bodies.map((at) => {
    const { mean, variance, logDensity } = conditionNormal({
      at,
      target: own.quantity,
      observations: others,
    });
    const curve = at.curve(own.quantity);
    const z = "z" in own ? own.z : boxCoxZ(curve, own.logValue);
    const extra = "z" in own ? own.zVariance : own.logVariance * boxCoxSlope(curve, own.logValue) ** 2;
    const sd = Math.sqrt(Math.max(variance + extra, 1e-6)) * residual.scale;
    return {
      weight: at.share * Math.exp(logDensity),
      p: 2 * tail.cumulative(-Math.abs((z - mean) / sd)),
      low: Math.exp(boxCoxLogValue(curve, mean - z99 * sd)),
      high: Math.exp(boxCoxLogValue(curve, mean + z99 * sd)),
    };
  });
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  return {
    observation: given.observation,
    p: parts.reduce((sum, part) => sum + part.p * (total > 0 ? part.weight / total : 1 / parts.length), 0),
    low: Math.min(...parts.map(({ low }) => low)),
    high: Math.max(...parts.map(({ high }) => high)),
  };
}
