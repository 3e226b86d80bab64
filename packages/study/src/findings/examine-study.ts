import type { Measurements } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";
import { regressionLimits } from "../accuracy/regression-limits.ts";
import type { StudyAnalysis } from "../analysis/index.ts";
import { crossValidateCalibration, learningCurve, weighedChildren } from "../calibration/index.ts";
import { doseConsequence } from "../consequence/index.ts";
import { childAt } from "../methods/child-at.ts";
import { methodId } from "../methods/index.ts";
import { selectRows } from "../table/index.ts";
import { bootstrapMethods } from "./bootstrap-methods.ts";
import type { MethodConsequence, MethodRegression, SiteLearning, StudyFindings } from "./study-findings.ts";

/** Of more children every n-th is taken: a sheet of doses, or a calibration, costs milliseconds each. */
const MOST_DOSED = 300;
const MOST_LEARNT = 2000;

export interface ExamineStudyOptions {
  /** Of everything drawn by chance: a whole number in [0, 4294967295]. */
  readonly seed: number;
  /** Of the bootstrap; 2,000 when absent. */
  readonly replicates?: number;
  /** Column of words that names the clusters; when absent `cluster`, else the children where one has several rows, else each row is its own. */
  readonly clusters?: string | undefined;
  /** Chosen for the consequence of errors; without it none is computed. */
  readonly formulary?: Formulary | undefined;
  readonly onProgress?: (share: number) => undefined;
}

/**
 * What a study shows beyond the accuracy of each method: intervals from drawn clusters, regression-based limits, the consequence for doses
 * under a chosen formulary, and what calibrating the site would gain.
 *
 * The same analysis, options and seed give the same findings. A column of clusters that the table lacks is a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { analyseStudy } from "@steelyard/study/analysis";
 * import { examineStudy } from "@steelyard/study/findings";
 *
 * const numbers = new Map([["weightKg", Float64Array.of(10, 20, 30)], ["chart", Float64Array.of(11, 21, 27)]]);
 * const table = { rows: 3, numbers, words: new Map(), rowNumbers: Int32Array.of(1, 2, 3) };
 * const analysis = analyseStudy(table, { methods: [{ type: "column", column: "chart" }] });
 * const { bootstrap } = examineStudy(analysis, { seed: 1, replicates: 100 });
 * assert.equal(bootstrap.methods[0]?.figures.meanPercent?.value.toFixed(3), "1.667");
 * ```
 *
 * @source efron-tibshirani-1993
 * @source bland-altman-1999
 */
export function examineStudy(
  analysis: StudyAnalysis,
  { seed, replicates = 2000, clusters, formulary, onProgress }: ExamineStudyOptions,
): StudyFindings {
  return {
    seed,
    bootstrap: bootstrapMethods(analysis, {
      seed,
      replicates,
      column: clusters,
      onProgress: (share) => onProgress?.(0.4 * share),
    }),
    regression: regressMethods(analysis),
    consequences: formulary === undefined ? [] : judgeDoses(analysis, formulary, onProgress),
    learning: learnFrom(analysis, seed),
  };
}

function regressMethods({ table, methods }: StudyAnalysis): readonly MethodRegression[] {
  const weights = table.numbers.get("weightKg") as Float64Array;
  return methods.flatMap(({ estimates: { method, estimateKg } }): MethodRegression[] => {
    const rows = rowsWith(weights, estimateKg);
    const sizes = Float64Array.from(
      rows,
      (row) => ((weights[row] as number) + (estimateKg[row] as number)) / 2,
    );
    const least = sizes.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    const most = sizes.reduce((a, b) => Math.max(a, b), 0);
    if (sizes.length < 4 || least === most) return [];
    const differences = Float64Array.from(
      rows,
      (row) => (100 * ((estimateKg[row] as number) - (weights[row] as number))) / (weights[row] as number),
    );
    return [
      {
        method: methodId(method),
        limits: regressionLimits({ differences, sizes }),
        sizesKg: { least, most },
      },
    ];
  });
}

function judgeDoses(
  { table, methods }: StudyAnalysis,
  formulary: Formulary,
  onProgress?: (share: number) => undefined,
): readonly MethodConsequence[] {
  const weights = table.numbers.get("weightKg") as Float64Array;
  const measurementsAt = childAt(table);
  return methods.flatMap(({ estimates: { method, estimateKg } }, i): MethodConsequence[] => {
    const rows = rowsWith(weights, estimateKg);
    if (rows.length === 0) return [];
    const every = Math.ceil(rows.length / MOST_DOSED);
    const children = rows
      .filter((_, k) => k % every === 0)
      .map((row): { measurements: Measurements; trueKg: number; estimateKg: number } => ({
        measurements: measurementsAt(row),
        trueKg: weights[row] as number,
        estimateKg: estimateKg[row] as number,
      }));
    const consequence = doseConsequence({
      children,
      formulary,
      onProgress: (share) => onProgress?.(0.4 + (0.6 * (i + share)) / methods.length),
    });
    return [{ method: methodId(method), every, consequence }];
  });
}

function learnFrom({ table }: StudyAnalysis, seed: number): SiteLearning {
  const every = Math.max(1, Math.ceil(table.rows / MOST_LEARNT));
  const children = weighedChildren(selectRows(table, (row) => row % every === 0));
  return {
    every,
    children: children.length,
    gain: crossValidateCalibration(children, { seed }),
    curve: learningCurve(children, { seed }),
  };
}

function rowsWith(weights: Float64Array, estimateKg: Float64Array): readonly number[] {
  const rows: number[] = [];
  for (let row = 0; row < weights.length; row++)
    if ((weights[row] as number) > 0 && (estimateKg[row] as number) > 0) rows.push(row);
  return rows;
}
