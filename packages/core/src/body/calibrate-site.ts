import { err, ok, type Result } from "../result.ts";
import type { BodyModel } from "./body-model.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { defaultMeasurementErrors, type MeasurementErrors } from "./measurement-errors.ts";
import { type ScoredChild, scoreRows, type WeighedChild } from "./score-rows.ts";
import {
  betweenPopulations,
  type PopulationShift,
  type SiteProfile,
  uncalibratedSite,
} from "./site-profile.ts";

/** Fewer weighed children than this say less than the prior does. */
export const fewestChildren = 20;
/** The prior on the spread weighs as much as this many children. */
const priorChildren = 20;
/** Degrees of freedom of the t that keeps single slips from moving the shift. */
const robustDf = 4;
/** Less agreement than this is no population but a mixed-up file. */
const leastWithin20 = 60;

/** How the estimates of these children compare with the scale. Percentages; errors are (estimate - scale) / scale. */
export interface CalibrationAgreement {
  readonly meanError: number;
  readonly within10: number;
  readonly within20: number;
  /** Share of scale weights inside the 95 % interval. */
  readonly coverage: number;
}

export interface Calibration {
  readonly site: SiteProfile;
  readonly modelVersion: string;
  /** Children used, and left out because the model could not serve them. */
  readonly children: number;
  readonly leftOut: number;
  /** Before: as an uncalibrated site. After: with this calibration, on the children it was made from. */
  readonly before: CalibrationAgreement;
  readonly after: CalibrationAgreement;
  /** Half-width of the 95 % interval of the mean shift, % of weight. */
  readonly shiftWithinPercent: number;
  /** Children that would be needed to know the shift within 1 % of weight. */
  readonly childrenForOnePercent: number;
}

export type CalibrationIssue =
  | {
      readonly type: "too-few-children";
      readonly children: number;
      readonly fewest: number;
      readonly leftOut: number;
    }
  /** Even at its best the model does not recognise these children: columns mixed up, wrong units, other children's weights. */
  | { readonly type: "incoherent-rows"; readonly within20: number; readonly least: number };

export interface CalibrateOptions {
  readonly model?: BodyModel;
  /** The site's own measurement errors; the defaults when absent. */
  readonly errors?: MeasurementErrors;
}

/**
 * Learns how a site's children differ from those of the fit, from children who were measured and weighed.
 *
 * Each scale weight is scored by its own estimate; the scores are regressed on the expected z (shift and slope) with the between-population
 * variance as the prior, so that few children move little, and with Student's t weights, so that single slips move less. The
 * residual spread is estimated with a prior of 20 children at the fit's own. Row order does not matter.
 *
 * `rows`: at least 20 children the model can serve. Fails with `too-few-children` or `incoherent-rows`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { calibrateSite } from "@steelyard/core/body";
 *
 * const calibrated = calibrateSite([]);
 * assert.ok(!calibrated.ok && calibrated.error.type === "too-few-children");
 * ```
 *
 * @source nutrition-surveys
 */
export function calibrateSite(
  rows: readonly WeighedChild[],
  { model = defaultBodyModel(), errors = defaultMeasurementErrors }: CalibrateOptions = {},
): Result<Calibration, CalibrationIssue> {
  const none = { shift: 0, slope: 0, variance: { shift: 0, slope: 0, covariance: 0 }, spread: 1 };
  const scored = scoreRows(rows, { model, site: { population: none, errors } });
  const leftOut = rows.length - scored.length;
  if (scored.length < fewestChildren) {
    return err({ type: "too-few-children", children: scored.length, fewest: fewestChildren, leftOut });
  }
  const population = posteriorShift(scored);
  const site = { population, errors };
  const after = agreement(scoreRows(rows, { model, site }));
  if (after.within20 < leastWithin20) {
    return err({ type: "incoherent-rows", within20: after.within20, least: leastWithin20 });
  }
  const before = agreement(scoreRows(rows, { model, site: { ...uncalibratedSite, errors } }));
  const percentPerSpread = medianSpreadPercent(scored);
  const sd = Math.sqrt(population.variance.shift);
  return ok({
    site,
    modelVersion: model.version,
    children: scored.length,
    leftOut,
    before,
    after,
    shiftWithinPercent: 1.96 * sd * percentPerSpread,
    childrenForOnePercent: Math.ceil((1.96 * population.spread * percentPerSpread) ** 2),
  });
}

/** Bayesian regression of score on expected z with iteratively reweighted errors; normal prior, two by two. */
function posteriorShift(scored: readonly ScoredChild[]): PopulationShift {
  let shift = 0;
  let slope = 0;
  let spread = 1;
  let variance = { shift: 0, slope: 0, covariance: 0 };
  for (let iteration = 0; iteration < 50; iteration++) {
    let [p11, p12, p22] = [1 / betweenPopulations.shift, 0, 1 / betweenPopulations.slope];
    let [b1, b2, squares] = [0, 0, 0];
    for (const { score, expectedZ } of scored) {
      const residual = (score - shift - slope * expectedZ) / spread;
      const weight = (robustDf + 1) / (robustDf + residual * residual);
      squares += weight * residual * residual * spread * spread;
      const precision = weight / (spread * spread);
      p11 += precision;
      p12 += precision * expectedZ;
      p22 += precision * expectedZ * expectedZ;
      b1 += precision * score;
      b2 += precision * score * expectedZ;
    }
    const determinant = p11 * p22 - p12 * p12;
    variance = { shift: p22 / determinant, slope: p11 / determinant, covariance: -p12 / determinant };
    const next = {
      shift: variance.shift * b1 + variance.covariance * b2,
      slope: variance.covariance * b1 + variance.slope * b2,
    };
    const nextSpread = Math.max(
      Math.sqrt((priorChildren + squares) / (priorChildren + scored.length)),
      spreadForCoverage({ scored, shift: next.shift, slope: next.slope }),
    );
    const change =
      Math.abs(next.shift - shift) + Math.abs(next.slope - slope) + Math.abs(nextSpread - spread);
    ({ shift, slope } = next);
    spread = nextSpread;
    if (change < 1e-10) break;
  }
  return { shift, slope, variance, spread };
}

/** The spread at which the 95 % interval holds 95 % of the children, shrunk to the fit's own: slips widen what is promised. */
function spreadForCoverage(given: { scored: readonly ScoredChild[]; shift: number; slope: number }): number {
  const { scored, shift, slope } = given;
  const sizes = scored
    .map(({ score, expectedZ }) => Math.abs(score - shift - slope * expectedZ))
    .sort((a, b) => a - b);
  const covered = (sizes[Math.ceil(0.95 * sizes.length) - 1] as number) / 1.96;
  return (priorChildren + scored.length * covered) / (priorChildren + scored.length);
}

function agreement(scored: readonly ScoredChild[]): CalibrationAgreement {
  const share = (holds: (child: ScoredChild) => boolean): number =>
    (100 * scored.filter(holds).length) / scored.length;
  const error = ({ estimateKg, weightKg }: ScoredChild): number => (100 * (estimateKg - weightKg)) / weightKg;
  return {
    meanError: scored.reduce((sum, child) => sum + error(child), 0) / scored.length,
    within10: share((child) => Math.abs(error(child)) <= 10),
    within20: share((child) => Math.abs(error(child)) <= 20),
    coverage: share(({ weightKg, low95Kg, high95Kg }) => weightKg >= low95Kg && weightKg <= high95Kg),
  };
}

/** What one unit of the residual spread is in % of weight, in the middle child. */
function medianSpreadPercent(scored: readonly ScoredChild[]): number {
  const percents = scored
    .map(({ low95Kg, high95Kg }) => (100 * Math.log(high95Kg / low95Kg)) / (2 * 1.96))
    .sort((a, b) => a - b);
  return percents[Math.floor(percents.length / 2)] as number;
}
