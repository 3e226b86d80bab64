import { boxCoxLogValue, boxCoxSlope, boxCoxZ } from "./box-cox.ts";
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

/** A Newton step shorter than this, in ln kg, leaves an error below two millionths of the weight (it falls with the square). */
const lastStep = 3e-4;

/**
 * The weight below which a child lies with this probability (one of those an estimate reports), kg.
 *
 * With one component the answer is closed. A mixture's quantile lies between those of its components, and is found there
 * by Newton steps kept inside the bracket.
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
  while (high - low > lastStep) {
    const { cumulative, density } = mixtureAt(components, logKg);
    const excess = cumulative - probability;
    if (excess > 0) high = logKg;
    else low = logKg;
    const newton = logKg - excess / density;
    if (Math.abs(newton - logKg) < lastStep) return Math.exp(newton);
    logKg = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return Math.exp(logKg);
}

/** The distribution function, and the density per unit of ln kg, at ln kg. */
function mixtureAt(
  components: readonly WeightComponent[],
  logKg: number,
): { readonly cumulative: number; readonly density: number } {
  let cumulative = 0;
  let density = 0;
  for (const { probability, curve, zMean, zScale, tailDf } of components) {
    const tail = tailOf(tailDf);
    const t = (boxCoxZ(curve, logKg) - zMean) / zScale;
    cumulative += probability * tail.cumulative(t);
    density += ((probability * tail.density(t)) / zScale) * boxCoxSlope(curve, logKg);
  }
  return { cumulative, density };
}
