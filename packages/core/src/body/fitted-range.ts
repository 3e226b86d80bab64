import type { BodyModel } from "./body-model.ts";
import { boxCoxLogValue } from "./box-cox.ts";
import type { Sex } from "./measurements.ts";
import {
  measuredValue,
  type NamedObservation,
  type ObservedName,
  observedQuantities,
} from "./observe-measurements.ts";

/** 999 of 1,000 children lie within this many SD of the median. */
const fittedZ = 3.2905;

/** Beyond the fitted range by this much there is a slip, or a body the model knows nothing of. Common practice: none
 * of the children in the open surveys whose values were not slips of the pen lies outside. */
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

/** The range of a measurement the model was fitted to at this length, in the unit of the measurement. */
export function fittedRange({
  model,
  name,
  lengthCm,
  sexes,
}: {
  model: BodyModel;
  name: ObservedName;
  lengthCm: number;
  sexes: readonly Sex[];
}): FittedRange {
  const quantity = observedQuantities.find(([own]) => own === name)?.[1];
  if (quantity === undefined) {
    throw new RangeError(
      `Cannot give a range as name must be a measurement of the model: current value is ${name}`,
    );
  }
  const ends = sexes.map((sex) => {
    const curve = model.at(sex, lengthCm).curve(quantity);
    return [Math.exp(boxCoxLogValue(curve, -fittedZ)), Math.exp(boxCoxLogValue(curve, fittedZ))] as const;
  });
  const low = measuredValue(name, Math.min(...ends.map(([end]) => end)));
  const high = measuredValue(name, Math.max(...ends.map(([, end]) => end)));
  return { low, high, refusedLow: low * refusedBelow, refusedHigh: high * refusedAbove };
}

/** Whether the observation lies within the range the fit has seen. */
export function isWithin(range: FittedRange, { value }: NamedObservation): boolean {
  return value >= range.low && value <= range.high;
}
