import type { Result } from "../result.ts";
import { centimetres, millimetres } from "../units/index.ts";
import { boxCoxLogValue } from "./box-cox.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { type EstimateOptions, estimateWeight } from "./estimate-weight.ts";
import { findIndex } from "./find-index.ts";
import type { MeasurementName, Measurements, Sex } from "./measurements.ts";
import { observeMeasurements } from "./observe-measurements.ts";
import { ObservedNormal } from "./observed-normal.ts";
import { quantityOfName } from "./quantity-value.ts";
import { uncalibratedSite } from "./site-profile.ts";
import type { BodyIssue, WeightEstimate } from "./weight-estimate.ts";

/** The girths a helper could measure next. */
type NextName = Extract<MeasurementName, "armMm" | "waistCm" | "thighCm" | "calfCm" | "headCm">;

const candidates: readonly NextName[] = ["armMm", "waistCm", "thighCm", "calfCm", "headCm"];

/** What one more measurement would buy. */
export interface NextMeasurement {
  readonly measurement: NextName;
  /** Expected half-width of the 95 % interval with it, % of the weight. */
  readonly halfWidthPercent: number;
}

/**
 * The expected half-width of the 95 % interval after each further girth, narrowest first; girths the model does not know at
 * this length are left out, and so are those that would not narrow it.
 *
 * The width hardly depends on what the tape will read, so each is tried at the value expected from what is known.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { nextMeasurements } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const next = nextMeasurements({ lengthCm: centimetres(136), armMm: millimetres(190) });
 * assert.ok(next.some(({ measurement }) => measurement === "waistCm"));
 * ```
 */
export function nextMeasurements(
  measurements: Measurements,
  { model = defaultBodyModel(), site = uncalibratedSite }: EstimateOptions = {},
): readonly NextMeasurement[] {
  const { scaleKg: _, ...unweighed } = measurements;
  const now = halfWidthPercent(estimateWeight(unweighed, { model, site }));
  const found = findIndex({ measurements: unweighed, model, errors: site.errors });
  if (now === undefined || !found.ok) return [];
  const indexed = found.value.model;
  const sexes: readonly Sex[] = measurements.sex === undefined ? ["m", "f"] : [measurements.sex];
  const observations = observeMeasurements({
    measurements: unweighed,
    index: indexed.index.quantity,
    errors: site.errors,
    byAge: model.byAge,
    sexes,
    wholeBody: 1,
  })
    .map(({ observation }) => observation)
    .filter(({ quantity }) => indexed.covers(quantity, found.value.value));
  return candidates
    .filter(
      (name) => measurements[name] === undefined && indexed.covers(quantityOfName[name], found.value.value),
    )
    .flatMap((measurement) => {
      const target = quantityOfName[measurement];
      const expected = sexes.map((sex) => {
        const at = indexed.at(sex, found.value.value);
        return boxCoxLogValue(at.curve(target), new ObservedNormal(at, observations).condition(target).mean);
      });
      const value = Math.exp(expected.reduce((sum, own) => sum + own, 0) / expected.length);
      const more = {
        ...unweighed,
        [measurement]: measurement === "armMm" ? millimetres(value) : centimetres(value),
      };
      const width = halfWidthPercent(estimateWeight(more, { model, site }));
      return width === undefined || width >= now ? [] : [{ measurement, halfWidthPercent: width }];
    })
    .sort((a, b) => a.halfWidthPercent - b.halfWidthPercent);
}

/** Half the width of the 95 % interval, % of the median; undefined when there is no estimate. */
function halfWidthPercent(estimate: Result<WeightEstimate, BodyIssue>): number | undefined {
  if (!estimate.ok) return undefined;
  const { low95Kg, high95Kg, totalKg } = estimate.value;
  return (50 * (high95Kg - low95Kg)) / totalKg;
}
