import { ok, type Result } from "../result.ts";
import { centimetres, kilograms } from "../units/index.ts";
import type { BodyModel } from "./body-model.ts";
import { conditionOnNodes } from "./condition-on-nodes.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { findIndex } from "./find-index.ts";
import { keepUsable } from "./keep-usable.ts";
import { limbFraction } from "./limb-fraction.ts";
import type { MeasurementName, Measurements, Sex } from "./measurements.ts";
import { type NamedObservation, observeMeasurements } from "./observe-measurements.ts";
import { type MeasuredName, measuredValue, quantityOfName } from "./quantity-value.ts";
import { type Conflict, setAsideConflicts } from "./set-aside-conflicts.ts";
import { type SiteProfile, uncalibratedSite } from "./site-profile.ts";
import { cumulativeOfComponents, quantileOfComponents } from "./weight-distribution.ts";
import type { BodyIssue, BodyWarning, WeightComponent, WeightEstimate } from "./weight-estimate.ts";

export interface EstimateOptions {
  /** The model to use; the one that ships when absent. */
  readonly model?: BodyModel;
  /** The site's calibration and measurement errors; `uncalibratedSite` when absent. */
  readonly site?: SiteProfile;
}

/**
 * Estimates the weight of a child from whatever was measured, as a distribution in kilograms.
 *
 * The z-scores of weight, arm, waist, thigh, calf, head and age at this length are jointly normal; the weight is their
 * conditional distribution given those at hand, mapped back through the weight curve. Each observation has its own error: a
 * length taken seated, an arm read to 5 mm, a build by eye, a weight stated by the carer or read months ago. An unknown sex
 * is a mixture of both, weighted by how well each explains the measurements. The total weight is the median. What
 * conflicts with the rest (predictive p < 0.005) is set aside and named. A weight read from a scale replaces the estimate,
 * and is compared with it. Without a length, the same along age.
 *
 * Length 45 to 205 cm (outside 50 to 200 with a warning), or age 0 to 18 years; a girth within 0.65 times the lowest and 1.6 times
 * the highest the fit has seen at that length. Fails with a `BodyIssue`; throws a `RangeError` on numbers that are not
 * finite.
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
 * assert.ok(estimate.ok && estimate.value.totalKg > 26 && estimate.value.totalKg < 30);
 * ```
 */
export function estimateWeight(
  measurements: Measurements,
  { model = defaultBodyModel(), site = uncalibratedSite }: EstimateOptions = {},
): Result<WeightEstimate, BodyIssue> {
  for (const name in measurements) {
    const value = measurements[name as MeasurementName];
    if (typeof value === "number" && !Number.isFinite(value)) {
      throw new RangeError(
        `Cannot estimate weight as ${name} must be a finite number: current value is ${value}`,
      );
    }
  }
  const estimate = estimateUnweighed({ measurements, model, site });
  const { scaleKg, lengthCm } = measurements;
  if (scaleKg === undefined) return estimate;
  return ok({
    totalKg: scaleKg,
    low95Kg: scaleKg,
    high95Kg: scaleKg,
    ...(lengthCm === undefined ? {} : { lengthCm }),
    rests: ["scaleKg"],
    components: [],
    warnings: estimate.ok ? unlikelyScale(scaleKg, estimate.value) : [],
  });
}

function estimateUnweighed(given: {
  measurements: Measurements;
  model: BodyModel;
  site: SiteProfile;
}): Result<WeightEstimate, BodyIssue> {
  const { measurements, model, site } = given;
  const found = findIndex({ measurements, model, errors: site.errors });
  if (!found.ok) return found;
  const indexed = found.value.model;
  const { sex, missingLimb } = measurements;
  const sexes: readonly Sex[] = sex === undefined ? ["m", "f"] : [sex];
  const bodies = sexes.map((own) => indexed.at(own, found.value.value));
  const wholeBody = 1 - (missingLimb === undefined ? 0 : limbFraction[missingLimb]);
  const observed = observeMeasurements({
    measurements,
    index: indexed.index.quantity,
    errors: site.errors,
    byAge: model.byAge,
    sexes,
    wholeBody,
  });
  const usable = keepUsable({ observed, found: found.value, bodies, measurements });
  if (!usable.ok) return usable;
  const { alternatives, conflicts } = setAsideConflicts({
    bodies,
    observations: usable.value.kept,
    residual: indexed.residual,
  });
  const share = 1 / alternatives.length;
  const kept: NamedObservation[] = [];
  const components: WeightComponent[] = [];
  for (const alternative of alternatives) {
    for (const observation of alternative.kept) kept.push(observation);
    const own = conditionOnNodes({ found: found.value, sexes, alternative, site, wholeBody, share });
    for (const component of own) components.push(component);
  }
  const warnings = [...found.value.warnings, ...usable.value.warnings];
  for (const conflict of conflicts) warnings.push(conflictWarning({ conflict, kept, wholeBody }));
  const rests = [found.value.name];
  let girth = false;
  for (const { name } of kept) {
    rests.push(name);
    girth ||= girths.has(name);
  }
  if (!girth) warnings.push({ type: "no-girth" });
  if (sex !== undefined) rests.push("sex");
  const totalKg = kilograms(quantileOfComponents(components, 0.5));
  const low95Kg = kilograms(quantileOfComponents(components, 0.025));
  const high95Kg = kilograms(quantileOfComponents(components, 0.975));
  if (indexed.index.quantity === "age") {
    return ok({ totalKg, low95Kg, high95Kg, rests, components, warnings });
  }
  const lengthCm = centimetres(found.value.value);
  return ok({ totalKg, low95Kg, high95Kg, lengthCm, rests, components, warnings });
}

const girths: ReadonlySet<MeasurementName> = new Set(["armMm", "waistCm", "thighCm", "calfCm", "headCm"]);

function conflictWarning(given: {
  conflict: Conflict;
  kept: readonly NamedObservation[];
  wholeBody: number;
}): BodyWarning {
  const { observation, p, low, high } = given.conflict;
  const unit = (value: number): number =>
    observation.name in quantityOfName
      ? measuredValue(observation.name as MeasuredName, value)
      : value * given.wholeBody;
  return {
    type: "measurement-conflict",
    measurement: observation.name,
    ...(observation.value === undefined ? {} : { value: observation.value }),
    low: unit(low),
    high: unit(high),
    p,
    outcome: given.kept.includes(observation) ? "one-or-the-other" : "left-out",
  };
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
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { cumulativeWeight, estimateWeight } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const estimate = estimateWeight({ lengthCm: centimetres(136), armMm: millimetres(190) });
 * assert.ok(estimate.ok && Math.abs(cumulativeWeight(estimate.value, estimate.value.totalKg) - 0.5) < 1e-4);
 * ```
 */
export function cumulativeWeight(estimate: WeightEstimate, kg: number): number {
  if (Number.isNaN(kg))
    throw new RangeError(`Cannot give a probability as kg must be a number: current value is ${kg}`);
  if (estimate.components.length === 0) return kg >= estimate.totalKg ? 1 : 0;
  return cumulativeOfComponents(estimate.components, kg);
}
