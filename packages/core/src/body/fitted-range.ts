import type { BodyAt } from "./indexed-model.ts";
import { type MeasuredName, measuredValue, quantityOfName } from "./quantity-value.ts";

/**
 * Beyond the fitted range by this much there is a slip, or a body the model knows nothing of. Wide on purpose: the most wasted
 * children of the open surveys must not be turned away.
 *
 * @source nutrition-surveys
 */
const refusedBelow = 0.65;
const refusedAbove = 1.6;

export interface FittedRange {
  /** Within: seen by the fit. Outside: an extrapolation. */
  readonly low: number;
  readonly high: number;
  /** Outside these nothing is computed. */
  readonly refusedLow: number;
  readonly refusedHigh: number;
}

/** The range of a measurement the model was fitted to at one index (the sexes in `bodies`), in the unit of the measurement. */
export function fittedRange({
  name,
  bodies,
}: {
  name: MeasuredName;
  bodies: readonly BodyAt[];
}): FittedRange {
  const quantity = quantityOfName[name];
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const at of bodies) {
    const fitted = at.fitted(quantity);
    lowest = Math.min(lowest, fitted.low);
    highest = Math.max(highest, fitted.high);
  }
  const low = measuredValue(name, lowest);
  const high = measuredValue(name, highest);
  return { low, high, refusedLow: low * refusedBelow, refusedHigh: high * refusedAbove };
}
