import { boxCoxLogValue, boxCoxPower, boxCoxSlopeOf, boxCoxZOf } from "./box-cox.ts";
import { tailOf } from "./tail.ts";
import type { WeightComponent } from "./weight-estimate.ts";

/** P(weight <= kg) of a mixture of Box-Cox components; 0 at and below 0 kg. Throws a `RangeError` on NaN. */
export function cumulativeOfComponents(components: readonly WeightComponent[], kg: number): number {
  if (Number.isNaN(kg)) {
    throw new RangeError(`Cannot compute a probability as kg must be a number: current value is ${kg}`);
  }
  return kg > 0 ? Math.min(mixtureAt(components, Math.log(kg)).cumulative, 1) : 0;
}

/**
 * Probability density of the mixture per kilogram; 0 at and below 0 kg. Throws a `RangeError` on NaN.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { densityOfComponents, estimateWeight } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const estimate = estimateWeight({ lengthCm: centimetres(136), armMm: millimetres(190) });
 * assert.ok(estimate.ok);
 * const { components, totalKg } = estimate.value;
 * assert.ok(densityOfComponents(components, totalKg) > densityOfComponents(components, 2 * totalKg));
 * ```
 */
export function densityOfComponents(components: readonly WeightComponent[], kg: number): number {
  if (Number.isNaN(kg)) {
    throw new RangeError(`Cannot compute a density as kg must be a number: current value is ${kg}`);
  }
  return kg > 0 ? mixtureAt(components, Math.log(kg)).density / kg : 0;
}

/** A step of Halley's shorter than this, in ln kg, leaves an error below a hundred-thousandth of the weight: it falls with the cube. */
const lastStep = 2e-3;
/** Quantiles of components nearer than this, in ln kg, are one. */
const sameLogKg = 1e-7;

/**
 * The weight below which a child lies with this probability (one of those an estimate reports), kg.
 *
 * With one component the answer is closed. A mixture's quantile lies between those of its components, and is found there by
 * Halley's steps kept inside the bracket.
 */
export function quantileOfComponents(components: readonly WeightComponent[], probability: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let logKg = 0;
  for (const { probability: share, curve, zMean, zScale, tailDf } of components) {
    const own = boxCoxLogValue(curve, zMean + tailOf(tailDf).quantile(probability) * zScale);
    low = Math.min(low, own);
    high = Math.max(high, own);
    logKg += share * own;
  }
  while (high - low > sameLogKg) {
    const { cumulative, density, densitySlope } = mixtureAt(components, logKg);
    const excess = cumulative - probability;
    if (excess > 0) high = logKg;
    else low = logKg;
    const newton = excess / density;
    const next = logKg - newton / (1 - (newton * densitySlope) / (2 * density));
    if (Math.abs(next - logKg) < lastStep) return Math.exp(next);
    logKg = next > low && next < high ? next : (low + high) / 2;
  }
  return Math.exp(logKg);
}

/** The distribution function, the density per unit of ln kg, and how that changes along ln kg as far as it is by the tails, at ln kg. */
function mixtureAt(
  components: readonly WeightComponent[],
  logKg: number,
): { readonly cumulative: number; readonly density: number; readonly densitySlope: number } {
  let cumulative = 0;
  let density = 0;
  let densitySlope = 0;
  for (const { probability, curve, zMean, zScale, tailDf } of components) {
    const tail = tailOf(tailDf);
    const power = boxCoxPower(curve, logKg);
    const t = (boxCoxZOf(power, curve, logKg) - zMean) / zScale;
    const tByLogKg = boxCoxSlopeOf(power, curve) / zScale;
    const own = probability * tail.density(t) * tByLogKg;
    cumulative += probability * tail.cumulative(t);
    density += own;
    densitySlope += own * tail.logDensitySlope(t) * tByLogKg;
  }
  return { cumulative, density, densitySlope };
}
