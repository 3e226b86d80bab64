import { err, ok, type Result } from "../result.ts";
import { centimetres, type Kilograms, kilograms } from "../units/index.ts";
import type { BodyModel } from "./body-model.ts";
import { conditionWeight } from "./condition-weight.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { type FoundIndex, findIndex } from "./find-index.ts";
import { fittedRange } from "./fitted-range.ts";
import { indexNodes } from "./index-nodes.ts";
import type { BodyAt } from "./indexed-model.ts";
import { limbFraction } from "./limb-fraction.ts";
import type { MeasurementName, Measurements, Sex } from "./measurements.ts";
import { type NamedObservation, observeMeasurements } from "./observe-measurements.ts";
import { proposeUnit } from "./propose-unit.ts";
import { type MeasuredName, measuredValue, quantityOfName } from "./quantity-value.ts";
import { setAsideConflicts } from "./set-aside-conflicts.ts";
import { shiftPopulation } from "./shift-population.ts";
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
  const components = alternatives.flatMap((kept) =>
    conditionOnNodes({ found: found.value, sexes, bodies, kept, site, wholeBody }).map((component) => ({
      ...component,
      probability: component.probability / alternatives.length,
    })),
  );
  const kept = alternatives.flat();
  const quantile = (probability: number): Kilograms =>
    kilograms(quantileOfComponents(components, probability));
  const warnings: BodyWarning[] = [
    ...found.value.warnings,
    ...usable.value.warnings,
    ...conflicts.map(({ observation, p, low, high }): BodyWarning => {
      const unit = (value: number): number =>
        observation.name in quantityOfName
          ? measuredValue(observation.name as MeasuredName, value)
          : value * wholeBody;
      return {
        type: "measurement-conflict",
        measurement: observation.name,
        ...(observation.value === undefined ? {} : { value: observation.value }),
        low: unit(low),
        high: unit(high),
        p,
        outcome: kept.includes(observation) ? "one-or-the-other" : "left-out",
      };
    }),
  ];
  if (!kept.some(({ name }) => girths.has(name))) warnings.push({ type: "no-girth" });
  return ok({
    totalKg: quantile(0.5),
    low95Kg: quantile(0.025),
    high95Kg: quantile(0.975),
    ...(indexed.index.quantity === "length" ? { lengthCm: centimetres(found.value.value) } : {}),
    rests: [
      found.value.name,
      ...kept.map(({ name }) => name),
      ...(sex === undefined ? [] : (["sex"] as const)),
    ],
    components,
    warnings,
  });
}

const girths: ReadonlySet<MeasurementName> = new Set(["armMm", "waistCm", "thighCm", "calfCm", "headCm"]);
/** Girths that fluid under the skin, or a pregnancy, makes measure something else than the body. */
const swollenBy = {
  oedema: new Set<MeasurementName>(["armMm", "waistCm", "thighCm", "calfCm"]),
  pregnant: new Set<MeasurementName>(["waistCm"]),
} as const;

/** Leaves out what this model, or this child's condition, has no use for, and says so; refuses what cannot be a measurement. */
function keepUsable(given: {
  observed: readonly NamedObservation[];
  found: FoundIndex;
  bodies: readonly BodyAt[];
  measurements: Measurements;
}): Result<
  { readonly kept: readonly NamedObservation[]; readonly warnings: readonly BodyWarning[] },
  BodyIssue
> {
  const { observed, found, bodies, measurements } = given;
  const kept: NamedObservation[] = [];
  const warnings: BodyWarning[] = [];
  for (const condition of ["oedema", "pregnant"] as const) {
    if (measurements[condition]) warnings.push({ type: "usual-weight", because: condition });
  }
  if (measurements.missingLimb !== undefined) {
    const limb = measurements.missingLimb;
    warnings.push({ type: "missing-limb", limb, share: limbFraction[limb] });
  }
  if (measurements.earlier !== undefined && !observed.some(({ name }) => name === "earlier")) {
    warnings.push({ type: "measurement-not-used", measurement: "earlier" });
  }
  for (const item of observed) {
    const { name, value, observation } = item;
    const swollen = (["oedema", "pregnant"] as const).find(
      (condition) => measurements[condition] && swollenBy[condition].has(name),
    );
    if (swollen !== undefined) {
      warnings.push({ type: "measurement-set-aside", measurement: name, because: swollen });
      continue;
    }
    if (!found.model.covers(observation.quantity, found.value)) {
      warnings.push({ type: "measurement-not-used", measurement: name });
      continue;
    }
    if (name in quantityOfName && value !== undefined) {
      const measured = name as MeasuredName;
      const { low, high, refusedLow, refusedHigh } = fittedRange({ name: measured, bodies });
      if (measured !== "ageMonths" && (value < refusedLow || value > refusedHigh)) {
        const proposal = proposeUnit({ value, unit: measured === "armMm" ? "mm" : "cm", low, high });
        return err({
          type: "measurement-out-of-range",
          measurement: name,
          value,
          low: refusedLow,
          high: refusedHigh,
          ...(proposal === undefined ? {} : { proposal }),
        });
      }
      if (value < low || value > high) {
        warnings.push({ type: "measurement-extrapolated", measurement: name, value, low, high });
      }
    }
    kept.push(item);
  }
  return ok({ kept, warnings });
}

/** One component for each sex and each length the child may really have, as likely as it explains the observations. */
function conditionOnNodes(given: {
  found: FoundIndex;
  sexes: readonly Sex[];
  bodies: readonly BodyAt[];
  kept: readonly NamedObservation[];
  site: SiteProfile;
  wholeBody: number;
}): readonly WeightComponent[] {
  const { found, sexes, bodies, kept, site } = given;
  const observations = kept.map(({ observation }) => observation);
  const logWhole = Math.log(given.wholeBody);
  const parts = indexNodes({ index: found.value, sd: found.sd }).flatMap((node) =>
    sexes.map((sex, i) => {
      const at = node.index === found.value ? (bodies[i] as BodyAt) : found.model.at(sex, node.index);
      const { logDensity, ...conditioned } = conditionWeight({
        at,
        observations,
        residual: found.model.residual,
      });
      const weight = at.curve("weight");
      return {
        logOdds: logDensity + Math.log(Math.max(at.share, 1e-12) * node.weight),
        curve: logWhole === 0 ? weight : { ...weight, logMedian: weight.logMedian + logWhole },
        conditioned: shiftPopulation(conditioned, site.population),
      };
    }),
  );
  const largest = Math.max(...parts.map(({ logOdds }) => logOdds));
  const total = parts.reduce((sum, { logOdds }) => sum + Math.exp(logOdds - largest), 0);
  return parts.map(({ curve, conditioned, logOdds }) => ({
    probability: Math.exp(logOdds - largest) / total,
    curve,
    ...conditioned,
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
