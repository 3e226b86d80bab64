import {
  type BodyModel,
  type CalibrationIssue,
  calibrateSite,
  defaultBodyModel,
  defaultMeasurementErrors,
  fewestChildren,
  type MeasurementErrors,
  type ScoredChild,
  scoreRows,
  uncalibratedSite,
  type WeighedChild,
} from "@steelyard/core/body";
import { err, ok, type Result } from "@steelyard/core/result";
import type { Interval } from "../accuracy/interval.ts";
import { createGenerator } from "../bootstrap/create-generator.ts";
import { mcnemar } from "../comparison/mcnemar.ts";
import { pairedDifference } from "../comparison/paired-difference.ts";
import { accuracyOf, errorPercent, type HeldOutAccuracy } from "./held-out-accuracy.ts";
import { shuffle } from "./shuffle.ts";

export interface CrossValidateOptions {
  readonly seed: number;
  /** 10 when absent. */
  readonly folds?: number;
  readonly model?: BodyModel;
  readonly errors?: MeasurementErrors;
}

/** What a calibration gains on children that it was not made from. */
export interface CalibrationGain {
  readonly folds: number;
  readonly leftOut: number;
  readonly before: HeldOutAccuracy;
  readonly after: HeldOutAccuracy;
  /** After minus before, points of PW10, with Newcombe's paired interval, and McNemar's mid-p. */
  readonly within10Gain: Interval & { readonly midP: number };
}

/**
 * Cross-validated gain of calibrating a site: every child is judged by a calibration that has not seen it.
 *
 * Children are dealt into folds by chance; `calibrateSite` is run on all folds but one, and scores that one. `before` is the uncalibrated
 * site on the same children.
 *
 * `rows`: with 10 folds at least 23 that the model can serve, so that each calibration has 20. `folds`: a whole number from 2, otherwise a
 * `RangeError`. Fails as `calibrateSite` does.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { crossValidateCalibration } from "@steelyard/study/calibration";
 *
 * const gain = crossValidateCalibration([], { seed: 1 });
 * assert.ok(!gain.ok && gain.error.type === "too-few-children");
 * ```
 *
 * @source hastie2009
 */
export function crossValidateCalibration(
  rows: readonly WeighedChild[],
  { seed, folds = 10, model = defaultBodyModel(), errors = defaultMeasurementErrors }: CrossValidateOptions,
): Result<CalibrationGain, CalibrationIssue> {
  if (!Number.isInteger(folds) || folds < 2)
    throw new RangeError(
      `Cannot cross-validate as folds must be a whole number from 2: current value is ${folds}`,
    );
  const plain = { model, site: { ...uncalibratedSite, errors } };
  const served = rows.filter((row) => scoreRows([row], plain).length === 1);
  const leftOut = rows.length - served.length;
  if (served.length < 2 * folds)
    return err({
      type: "too-few-children",
      children: served.length,
      fewest: Math.max(fewestChildren, 2 * folds),
      leftOut,
    });
  const dealt = shuffle(served, createGenerator(seed));
  const [before, after]: [ScoredChild[], ScoredChild[]] = [[], []];
  for (let fold = 0; fold < folds; fold++) {
    const held = dealt.filter((_, i) => i % folds === fold);
    const calibration = calibrateSite(
      dealt.filter((_, i) => i % folds !== fold),
      { model, errors },
    );
    if (!calibration.ok) return calibration;
    before.push(...scoreRows(held, plain));
    after.push(...scoreRows(held, { model, site: calibration.value.site }));
  }
  return ok({
    folds,
    leftOut,
    before: accuracyOf(before),
    after: accuracyOf(after),
    within10Gain: gainOf(before, after),
  });
}

function gainOf(before: readonly ScoredChild[], after: readonly ScoredChild[]): Interval & { midP: number } {
  const counts = { both: 0, onlyFirst: 0, onlySecond: 0, neither: 0 };
  const near = (child: ScoredChild): boolean => Math.abs(errorPercent(child)) - 1e-9 <= 10;
  for (const [i, child] of after.entries()) {
    const now = near(child);
    const then = near(before[i] as ScoredChild);
    if (now && then) counts.both++;
    else if (now) counts.onlyFirst++;
    else if (then) counts.onlySecond++;
    else counts.neither++;
  }
  const { value, low, high } = pairedDifference(counts);
  return { value: 100 * value, low: 100 * low, high: 100 * high, midP: mcnemar(counts).midP };
}
