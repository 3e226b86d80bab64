import {
  type BodyModel,
  defaultMeasurementErrors,
  referenceSite,
  type SiteProfile,
  scoreRows,
} from "@steelyard/core/body";
import { measureAccuracy } from "../accuracy.ts";
import { judge } from "../judge.ts";
import type { SurveyChild } from "./read-surveys.ts";
import { lengthAndArm } from "./survey-measures.ts";

/** Fewer children than this do not say where a population lies. */
const fewest = 100;
/** The fit's population with everybody's errors: what the prior is a prior to. */
const unshifted: SiteProfile = { ...referenceSite, errors: defaultMeasurementErrors };

interface Lying {
  readonly dataset: string;
  readonly children: number;
  readonly shift: number;
  readonly slope: number;
  readonly spread: number;
}

/**
 * Where each survey lies from the fit, on the scale of the estimate's own spread, and the variance between surveys, for all
 * and with each left out.
 */
export function betweenSurveys(given: {
  children: readonly SurveyChild[];
  modelFor: (child: SurveyChild) => BodyModel;
}): string {
  const datasets = [...new Set(given.children.map(({ dataset }) => dataset))].sort();
  const lying = datasets.flatMap((dataset): Lying[] => {
    const own = given.children.filter((child) => child.dataset === dataset);
    const model = given.modelFor(own[0] as SurveyChild);
    const rows = own.map((child) => ({ measurements: lengthAndArm(child), weightKg: child.weightKg }));
    const scored = scoreRows(rows, { model, site: unshifted });
    return scored.length < fewest ? [] : [{ dataset, ...regress(scored) }];
  });
  const squares = (rows: readonly Lying[]) => ({
    shift: rows.reduce((sum, { shift }) => sum + shift * shift, 0) / rows.length,
    slope: rows.reduce((sum, { slope }) => sum + slope * slope, 0) / rows.length,
  });
  const all = squares(lying);
  const upper = upperBound(lying.length);
  const spread = upperSpread(lying);
  return `Scores of the scale weight in its own estimate (0 in the middle, one unit a standard deviation), regressed on the expected z by
robust least squares. The variance is the mean square over surveys, since the fit's own population is the origin: shift
${all.shift.toFixed(2)}, slope ${all.slope.toFixed(3)}. So few surveys leave the variance itself uncertain, and a site that has not been calibrated may
be unlike all of them: the model takes the upper 95 % bound, ${upper.toFixed(2)} times as much: shift ${(upper * all.shift).toFixed(2)}, slope ${(upper * all.slope).toFixed(2)}.
Some surveys scatter more about their own shift and slope than the children of the fit, since their tapes are rougher: the
spread is likewise taken at the upper 95 % bound, of its root mean square over surveys: ${spread.toFixed(2)}.

The last column is the honest trial: the share of scale weights inside the 95 % interval when variance and spread are the upper bounds from the other
surveys alone.

| survey | children | shift | slope | spread | shift variance without it | slope variance without it | spread bound without it | covers |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${lying
  .map((row) => {
    const others = lying.filter((other) => other !== row);
    const without = squares(others);
    const bound = upperBound(others.length);
    const variance = { shift: bound * without.shift, slope: bound * without.slope, covariance: 0 };
    const spread = upperSpread(others);
    const site = { ...unshifted, population: { ...unshifted.population, variance, spread } };
    const own = given.children.filter(({ dataset }) => dataset === row.dataset);
    const { rows } = judge({ children: own, measure: lengthAndArm, modelFor: given.modelFor, site });
    const { coverage } = measureAccuracy(rows);
    return `| ${row.dataset} | ${row.children} | ${row.shift.toFixed(2)} | ${row.slope.toFixed(2)} | ${row.spread.toFixed(2)} | ${without.shift.toFixed(2)} | ${without.slope.toFixed(3)} | ${spread.toFixed(2)} | ${coverage.toFixed(1)} |`;
  })
  .join("\n")}`;
}

/** n / (5 % quantile of chi-square with n degrees of freedom): the upper 95 % bound of a variance in units of its estimate. */
function upperBound(n: number): number {
  // Wilson and Hilferty; within 1 % of the tables from n = 5 on.
  const quantile = n * (1 - 2 / (9 * n) - 1.6449 * Math.sqrt(2 / (9 * n))) ** 3;
  return n / quantile;
}

/** The upper 95 % bound of the root mean square of the spreads, by Student's t of their squares: squares are what adds to the variances. */
function upperSpread(rows: readonly Lying[]): number {
  const squares = rows.map(({ spread }) => spread ** 2);
  const df = squares.length - 1;
  const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
  const variance = squares.reduce((sum, square) => sum + (square - mean) ** 2, 0) / df;
  // The t of one tail of 5 % by the first terms of its expansion, Abramowitz & Stegun 26.7.5: within 0.004 of the tables from 6 degrees on.
  const z = 1.6449;
  const t = z + (z ** 3 + z) / (4 * df) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * df ** 2);
  return Math.sqrt(mean + t * Math.sqrt(variance / squares.length));
}

function regress(scored: readonly { score: number; expectedZ: number }[]): Omit<Lying, "dataset"> {
  let [shift, slope, spread] = [0, 0, 1];
  for (let iteration = 0; iteration < 30; iteration++) {
    let [n, sx, sxx, sy, sxy, squares] = [0, 0, 0, 0, 0, 0];
    for (const { score, expectedZ } of scored) {
      const t = (score - shift - slope * expectedZ) / spread;
      const weight = 5 / (4 + t * t);
      squares += weight * t * t * spread * spread;
      n += weight;
      sx += weight * expectedZ;
      sxx += weight * expectedZ * expectedZ;
      sy += weight * score;
      sxy += weight * score * expectedZ;
    }
    slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
    shift = (sy - slope * sx) / n;
    spread = Math.sqrt(squares / scored.length);
  }
  return { children: scored.length, shift, slope, spread };
}
