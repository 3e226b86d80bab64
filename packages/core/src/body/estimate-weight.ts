import { err, ok, type Result } from "../result.ts";
import { type Kilograms, kilograms } from "../units/index.ts";
import { type BodyAt, type BodyModel, modelLengthCm } from "./body-model.ts";
import type { Residual } from "./body-reference.ts";
import { conditionWeight } from "./condition-weight.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { fittedRange, isWithin } from "./fitted-range.ts";
import type { MeasurementName, Measurements, Sex } from "./measurements.ts";
import { type NamedObservation, observeMeasurements } from "./observe-measurements.ts";
import { proposeUnit } from "./propose-unit.ts";
import { cumulativeOfComponents, quantileOfComponents } from "./weight-distribution.ts";
import type { BodyIssue, BodyWarning, WeightComponent, WeightEstimate } from "./weight-estimate.ts";

/** Lengths the open data reach, cm; outside, the curves are continued and say so. */
const fittedLengthCm = { low: 50, high: 200 } as const;

export interface EstimateOptions {
  /** The model to use; the one that ships when absent. */
  readonly model?: BodyModel;
}

/**
 * Estimates the weight of a child from lying length and whatever else was measured, as a distribution in kilograms.
 *
 * The z-scores of weight, arm, waist, thigh, calf, head and age at this length are jointly normal; the weight is their
 * conditional distribution given those at hand, mapped back through the weight curve. An unknown sex is a mixture of
 * both, weighted by how well each explains the measurements. The total weight is the median. A weight read from a scale
 * replaces the estimate, and is compared with it where there is a length.
 *
 * Length 45 to 205 cm (outside 50 to 200 with a warning); a girth within 0.65 times the lowest and 1.6 times the highest
 * the fit has seen at that length. Fails with `length-missing` or `measurement-out-of-range`; throws a
 * `RangeError` on numbers that are not finite.
 *
 * @source nhanes
 * @source cole1992
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { estimateWeight } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const estimate = estimateWeight({ lengthCm: centimetres(136), armMm: millimetres(190) });
 * assert(estimate.ok && estimate.value.totalKg > 26 && estimate.value.totalKg < 30);
 * ```
 */
export function estimateWeight(
  measurements: Measurements,
  { model = defaultBodyModel() }: EstimateOptions = {},
): Result<WeightEstimate, BodyIssue> {
  for (const name in measurements) {
    const value = measurements[name as MeasurementName];
    if (typeof value === "number" && !Number.isFinite(value)) {
      throw new RangeError(
        `Cannot estimate weight as ${name} must be a finite number: current value is ${value}`,
      );
    }
  }
  const fromMeasurements = estimateFromLength(measurements, model);
  const { scaleKg } = measurements;
  if (scaleKg === undefined) return fromMeasurements;
  const warnings: BodyWarning[] = fromMeasurements.ok ? unlikelyScale(scaleKg, fromMeasurements.value) : [];
  return ok({
    totalKg: scaleKg,
    low95Kg: scaleKg,
    high95Kg: scaleKg,
    rests: ["scaleKg"],
    components: [],
    warnings,
  });
}

function estimateFromLength(measurements: Measurements, model: BodyModel): Result<WeightEstimate, BodyIssue> {
  const { lengthCm, sex } = measurements;
  if (lengthCm === undefined) return err({ type: "length-missing" });
  if (lengthCm < modelLengthCm.low || lengthCm > modelLengthCm.high) {
    const proposal = proposeUnit({ value: lengthCm, unit: "cm", ...modelLengthCm });
    return err({
      type: "measurement-out-of-range",
      measurement: "lengthCm",
      value: lengthCm,
      ...modelLengthCm,
      ...(proposal === undefined ? {} : { proposal }),
    });
  }
  const warnings: BodyWarning[] = [];
  if (lengthCm < fittedLengthCm.low || lengthCm > fittedLengthCm.high) {
    warnings.push({
      type: "measurement-extrapolated",
      measurement: "lengthCm",
      value: lengthCm,
      ...fittedLengthCm,
    });
  }
  for (const name of ["posture", "build", "carerKg"] as const) {
    if (measurements[name] !== undefined) warnings.push({ type: "measurement-not-used", measurement: name });
  }
  const sexes: readonly Sex[] = sex === undefined ? ["m", "f"] : [sex];
  const bodies = sexes.map((own) => model.at(own, lengthCm));
  const used: NamedObservation[] = [];
  for (const observation of observeMeasurements(measurements)) {
    const { name, value } = observation;
    if (!model.covers(observation.quantity, lengthCm)) {
      warnings.push({ type: "measurement-not-used", measurement: name });
      continue;
    }
    const range = fittedRange({ name, bodies });
    if (name !== "ageMonths" && (value < range.refusedLow || value > range.refusedHigh)) {
      const proposal = proposeUnit({
        value,
        unit: name === "armMm" ? "mm" : "cm",
        low: range.low,
        high: range.high,
      });
      return err({
        type: "measurement-out-of-range",
        measurement: name,
        value,
        low: range.refusedLow,
        high: range.refusedHigh,
        ...(proposal === undefined ? {} : { proposal }),
      });
    }
    if (!isWithin(range, observation)) {
      warnings.push({
        type: "measurement-extrapolated",
        measurement: name,
        value,
        low: range.low,
        high: range.high,
      });
    }
    used.push(observation);
  }
  if (!used.some(({ name }) => name !== "ageMonths")) warnings.push({ type: "no-girth" });
  const components = conditionOnBodies({ bodies, residual: model.residual, observations: used });
  const quantile = (probability: number): Kilograms =>
    kilograms(quantileOfComponents(components, probability));
  const rests: MeasurementName[] = [
    "lengthCm",
    ...used.map(({ name }) => name),
    ...(sex === undefined ? [] : (["sex"] as const)),
  ];
  return ok({
    totalKg: quantile(0.5),
    low95Kg: quantile(0.025),
    high95Kg: quantile(0.975),
    rests,
    components,
    warnings,
  });
}

function conditionOnBodies(given: {
  bodies: readonly BodyAt[];
  residual: Residual;
  observations: readonly NamedObservation[];
}): readonly WeightComponent[] {
  const parts = given.bodies.map((at) => {
    const conditioned = conditionWeight({ ...given, at });
    return {
      weight: at.curve("weight"),
      conditioned,
      logOdds: conditioned.logDensity + Math.log(Math.max(at.share, 1e-12)),
    };
  });
  const largest = Math.max(...parts.map(({ logOdds }) => logOdds));
  const total = parts.reduce((sum, { logOdds }) => sum + Math.exp(logOdds - largest), 0);
  return parts.map(({ weight, conditioned, logOdds }) => ({
    probability: Math.exp(logOdds - largest) / total,
    curve: weight,
    zMean: conditioned.zMean,
    zScale: conditioned.zScale,
    ...(conditioned.tailDf === undefined ? {} : { tailDf: conditioned.tailDf }),
  }));
}

function unlikelyScale(scaleKg: number, { components }: WeightEstimate): BodyWarning[] {
  const p = cumulativeOfComponents(components, scaleKg);
  if (p >= 0.0025 && p <= 0.9975) return [];
  return [
    {
      type: "scale-weight-unlikely",
      scaleKg,
      low: quantileOfComponents(components, 0.0025),
      high: quantileOfComponents(components, 0.9975),
    },
  ];
}

/**
 * P(true weight <= kg) for an estimate; a step at the scale weight when it was weighed. Throws a `RangeError` on NaN.
 */
export function cumulativeWeight(estimate: WeightEstimate, kg: number): number {
  if (estimate.components.length === 0) return kg >= estimate.totalKg ? 1 : 0;
  return cumulativeOfComponents(estimate.components, kg);
}
