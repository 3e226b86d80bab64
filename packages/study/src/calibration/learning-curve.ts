import {
  type BodyModel,
  calibrateSite,
  defaultBodyModel,
  defaultMeasurementErrors,
  fewestChildren,
  type MeasurementErrors,
  scoreRows,
  uncalibratedSite,
  type WeighedChild,
} from "@steelyard/core/body";
import { createGenerator } from "../bootstrap/create-generator.ts";
import { accuracyOf, type HeldOutAccuracy } from "./held-out-accuracy.ts";
import { shuffle } from "./shuffle.ts";

export interface LearningCurveOptions {
  readonly seed: number;
  /** Children to calibrate with; those from 20 to half of what there is, doubling, when absent. */
  readonly sizes?: readonly number[];
  /** Draws per size; 10 when absent. */
  readonly repeats?: number;
  readonly model?: BodyModel;
  readonly errors?: MeasurementErrors;
  /** Told 0 to 1; false stops with what there is. */
  readonly onProgress?: (share: number) => boolean | undefined;
}

/** Accuracy on the other children after calibrating with some: the mean over draws. */
export interface LearningPoint extends HeldOutAccuracy {
  /** Children calibrated with; 0 is the uncalibrated site on all. */
  readonly size: number;
  /** Lowest and highest PW10 of the draws, %. */
  readonly within10Range: { readonly low: number; readonly high: number };
  /** Draws whose calibration was refused, left out of the mean. */
  readonly refused: number;
}

/**
 * Learning curve of a site's calibration: how accuracy on the other children grows with the number calibrated with, from 0 on.
 *
 * Each point is the mean over several draws by chance; the children not drawn are judged.
 *
 * `sizes`: whole numbers from 20 that leave at least 20 children to judge; others are left out. The same seed gives the same curve.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { learningCurve } from "@steelyard/study/calibration";
 *
 * assert.deepEqual(learningCurve([], { seed: 1 }), []);
 * ```
 *
 * @source hastie2009
 */
export function learningCurve(
  rows: readonly WeighedChild[],
  {
    seed,
    sizes,
    repeats = 10,
    model = defaultBodyModel(),
    errors = defaultMeasurementErrors,
    onProgress,
  }: LearningCurveOptions,
): readonly LearningPoint[] {
  const plain = { model, site: { ...uncalibratedSite, errors } };
  const served = rows.filter((row) => scoreRows([row], plain).length === 1);
  if (served.length === 0) return [];
  const none = accuracyOf(scoreRows(served, plain));
  const points: LearningPoint[] = [
    {
      size: 0,
      refused: 0,
      ...none,
      within10Range: { low: none.within10Percent, high: none.within10Percent },
    },
  ];
  const usable = (sizes ?? doubling(served.length / 2)).filter(
    (size) => Number.isInteger(size) && size >= fewestChildren && served.length - size >= fewestChildren,
  );
  const generator = createGenerator(seed);
  for (const [i, size] of usable.entries()) {
    const draws: HeldOutAccuracy[] = [];
    for (let repeat = 0; repeat < repeats; repeat++) {
      if (onProgress?.((i + repeat / repeats) / usable.length) === false) return points;
      const order = shuffle(served, generator);
      const calibration = calibrateSite(order.slice(0, size), { model, errors });
      if (calibration.ok)
        draws.push(accuracyOf(scoreRows(order.slice(size), { model, site: calibration.value.site })));
    }
    if (draws.length > 0) points.push(pointOf({ size, draws, refused: repeats - draws.length }));
  }
  return points;
}

function pointOf(given: { size: number; draws: readonly HeldOutAccuracy[]; refused: number }): LearningPoint {
  const { size, draws, refused } = given;
  const mean = (pick: (draw: HeldOutAccuracy) => number): number =>
    draws.reduce((sum, draw) => sum + pick(draw), 0) / draws.length;
  const within10 = draws.map(({ within10Percent }) => within10Percent);
  return {
    size,
    refused,
    children: (draws[0] as HeldOutAccuracy).children,
    meanErrorPercent: mean((draw) => draw.meanErrorPercent),
    rmspe: mean((draw) => draw.rmspe),
    within10Percent: mean((draw) => draw.within10Percent),
    within20Percent: mean((draw) => draw.within20Percent),
    coveragePercent: mean((draw) => draw.coveragePercent),
    within10Range: { low: Math.min(...within10), high: Math.max(...within10) },
  };
}

function doubling(most: number): number[] {
  const sizes: number[] = [];
  for (let size = fewestChildren; size <= most; size *= 2) sizes.push(size);
  return sizes;
}
