import { defaultBodyModel } from "./default-body-model.ts";
import type { EstimateOptions } from "./estimate-weight.ts";
import { logDensityOfAnything, type MeasurementDensity, measurementDensity } from "./measurement-density.ts";
import type { MeasurementName, Measurements } from "./measurements.ts";
import { uncalibratedSite } from "./site-profile.ts";
import type { Slip } from "./slip.ts";
import { slipHypotheses } from "./slip-hypotheses.ts";

export interface RecogniseOptions extends EstimateOptions {
  /**
   * Slips are told when the probability that something is wrong is at least this, 0 to 1. When absent 0.2, chosen on half of the rows of
   * reference/slips-log.md so that clean rows raise fewer than 1 false alarm in 100 and nearly all slips are seen.
   */
  readonly alarmAt?: number;
}

/** Measurements this near to what is expected (chi-squared) hold no slip that could be seen: there is no need to try any. */
const coherentDistance = 6;
/** Explanations less likely than this are not worth a word. */
const leastP = 0.05;

/**
 * Slips that would explain measurements which do not belong to one child: a wrong unit, a moved decimal point, two digits or two fields
 * exchanged, or a number that nothing explains; most likely first, and empty when the measurements agree.
 *
 * Each slip is tried on its own (a tape in inches with all that was read off it): p = prior x density of the measurements without it, over the sum for all slips and for nothing being
 * wrong, with the density that of the joint model, in Student's t of 4 degrees of freedom. A number that nothing explains comes last, as its
 * proposal is to leave it out, while the others can be checked against the tape. Nothing is applied: `proposed` is for a person to accept.
 *
 * Inputs: any measurements, in their units; values of any size, as wrong ones are what this is for. What oedema or a
 * pregnancy does to a girth or a weight cannot be told from a slip, so these are then not judged. Threshold and
 * accuracy: reference/slips-log.md. Throws a `RangeError` on numbers that are not finite and when `alarmAt` is not within 0 to 1.
 *
 * @source nist-handbook-44 inch and pound
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { recogniseSlips } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const [slip] = recogniseSlips({ lengthCm: centimetres(136), armMm: millimetres(19) });
 * assert.ok(slip?.type === "unit" && slip.from === "cm");
 * assert.deepEqual(slip.changes, [{ measurement: "armMm", given: 19, value: 190 }]);
 * assert.deepEqual(recogniseSlips({ lengthCm: centimetres(136), armMm: millimetres(190) }), []);
 * ```
 */
export function recogniseSlips(
  measurements: Measurements,
  { model = defaultBodyModel(), site = uncalibratedSite, alarmAt = 0.2 }: RecogniseOptions = {},
): readonly Slip[] {
  check(measurements, alarmAt);
  const { judged, swollen } = parted(measurements);
  const density = (own: Measurements): MeasurementDensity =>
    measurementDensity({ measurements: own, model, site });
  const asGiven = density(judged);
  if (asGiven.squaredDistance < coherentDistance) return [];
  const explanations = slipHypotheses(judged).map(({ kind, prior, changes, proposed }) => {
    const leftOut = changes.filter(({ value }) => value === undefined).length;
    return {
      slip: { ...kind, changes, proposed: { ...proposed, ...swollen } },
      logOdds: Math.log(prior) + density(proposed).logDensity + leftOut * logDensityOfAnything,
    };
  });
  const all = [asGiven.logDensity, ...explanations.map(({ logOdds }) => logOdds)];
  const largest = Math.max(...all);
  if (largest === Number.NEGATIVE_INFINITY) return [];
  const total = all.reduce((sum, log) => sum + Math.exp(log - largest), 0);
  const share = (log: number): number => Math.exp(log - largest) / total;
  if (1 - share(asGiven.logDensity) < alarmAt) return [];
  return explanations
    .map(({ slip, logOdds }): Slip => ({ ...slip, p: share(logOdds) }))
    .filter(({ p }) => p >= leastP)
    .sort((a, b) => Number(a.type === "outlier") - Number(b.type === "outlier") || b.p - a.p);
}

function check(measurements: Measurements, alarmAt: number): void {
  if (!(alarmAt >= 0 && alarmAt <= 1)) {
    throw new RangeError(
      `Cannot recognise slips as alarmAt must be within 0 to 1: current value is ${alarmAt}`,
    );
  }
  for (const [name, value] of Object.entries(measurements)) {
    if (typeof value === "number" && !Number.isFinite(value)) {
      throw new RangeError(
        `Cannot recognise slips as ${name} must be a finite number: current value is ${value}`,
      );
    }
  }
}

const weights: readonly MeasurementName[] = ["carerKg", "scaleKg", "earlier", "build"];
const swelling = {
  oedema: new Set<string>(["armMm", "waistCm", "thighCm", "calfCm", ...weights]),
  pregnant: new Set<string>(["waistCm", ...weights]),
} as const;

/** What can be judged, and what oedema or a pregnancy may have changed. */
function parted(measurements: Measurements): {
  readonly judged: Measurements;
  readonly swollen: Measurements;
} {
  const { oedema, pregnant } = measurements;
  if (!oedema && !pregnant) return { judged: measurements, swollen: {} };
  const isSwollen = ([name]: [string, unknown]): boolean =>
    (oedema === true && swelling.oedema.has(name)) || (pregnant === true && swelling.pregnant.has(name));
  const entries = Object.entries(measurements);
  return {
    judged: Object.fromEntries(entries.filter((entry) => !isSwollen(entry))),
    swollen: Object.fromEntries(entries.filter(isSwollen)),
  };
}
