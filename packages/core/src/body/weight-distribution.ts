import { type BoxCox, boxCoxLogValue, boxCoxSlope, boxCoxZ } from "./box-cox.ts";
import { tailOf } from "./tail.ts";
import type { WeightComponent } from "./weight-estimate.ts";

function curveOf(component: WeightComponent): BoxCox {
  return { logMedian: Math.log(component.medianKg), sigma: component.sigma, lambda: component.lambda };
}

/** P(weight <= kg) of a mixture of Box-Cox-normal components; 0 at and below 0 kg. */
export function cumulativeOfComponents(components: readonly WeightComponent[], kg: number): number {
  if (Number.isNaN(kg))
    throw new RangeError(`Cannot compute a probability as kg must be a number: current value is ${kg}`);
  if (kg <= 0) return 0;
  const logKg = Math.log(kg);
  let sum = 0;
  for (const component of components) {
    const t = (boxCoxZ(curveOf(component), logKg) - component.zMean) / component.zScale;
    sum += component.probability * tailOf(component.tailDf).cumulative(t);
  }
  return Math.min(sum, 1);
}

/** Probability density of the mixture per kilogram; 0 at and below 0 kg. */
export function densityOfComponents(components: readonly WeightComponent[], kg: number): number {
  if (Number.isNaN(kg))
    throw new RangeError(`Cannot compute a density as kg must be a number: current value is ${kg}`);
  if (kg <= 0) return 0;
  const logKg = Math.log(kg);
  let sum = 0;
  for (const component of components) {
    const curve = curveOf(component);
    const t = (boxCoxZ(curve, logKg) - component.zMean) / component.zScale;
    sum +=
      ((component.probability * tailOf(component.tailDf).density(t)) / component.zScale) *
      boxCoxSlope(curve, logKg);
  }
  return sum / kg;
}

/**
 * The weight below which a child lies with this probability, kg.
 *
 * With one component the answer is closed. A mixture's quantile lies between those of its components, and is found there
 * by Newton steps kept inside the bracket, to a ten-millionth of the weight.
 */
export function quantileOfComponents(components: readonly WeightComponent[], probability: number): number {
  const curves = components.map(curveOf);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let logKg = 0;
  components.forEach((component, i) => {
    const own = boxCoxLogValue(
      curves[i] as BoxCox,
      component.zMean + tailOf(component.tailDf).quantile(probability) * component.zScale,
    );
    low = Math.min(low, own);
    high = Math.max(high, own);
    logKg += component.probability * own;
  });
  for (let iteration = 0; iteration < 40 && high - low > 1e-7; iteration++) {
    let cumulative = 0;
    let density = 0;
    for (let i = 0; i < components.length; i++) {
      const component = components[i] as WeightComponent;
      const curve = curves[i] as BoxCox;
      const tail = tailOf(component.tailDf);
      const t = (boxCoxZ(curve, logKg) - component.zMean) / component.zScale;
      cumulative += component.probability * tail.cumulative(t);
      density += ((component.probability * tail.density(t)) / component.zScale) * boxCoxSlope(curve, logKg);
    }
    if (cumulative > probability) high = logKg;
    else low = logKg;
    const newton = logKg + (probability - cumulative) / density;
    if (Math.abs(newton - logKg) < 1e-7) {
      logKg = newton;
      break;
    }
    logKg = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return Math.exp(logKg);
}
