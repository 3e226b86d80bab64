import type { Quantity } from "./body-reference.ts";
import type { Observation } from "./condition-weight.ts";
import type { MeasurementName, Measurements } from "./measurements.ts";

/** Months from conception to birth. Age enters the model from conception, so that a newborn's age has a logarithm. */
const gestationMonths = 9;

/** The names of the measurements that are quantities of the model. */
export type ObservedName = Extract<
  MeasurementName,
  "armMm" | "waistCm" | "thighCm" | "calfCm" | "headCm" | "ageMonths"
>;

/** The quantity each such measurement is, in order of entry. */
export const quantityOfName: Readonly<Record<ObservedName, Quantity>> = {
  armMm: "arm",
  waistCm: "waist",
  thighCm: "thigh",
  calfCm: "calf",
  headCm: "head",
  ageMonths: "age",
};

const observedNames = Object.keys(quantityOfName) as readonly ObservedName[];

/** The number the model works with: the measurement itself, except that age counts from conception. */
export function quantityValue(name: ObservedName, value: number): number {
  return name === "ageMonths" ? value + gestationMonths : value;
}

/** The measurement behind a number of the model: the inverse of `quantityValue`. */
export function measuredValue(name: ObservedName, quantity: number): number {
  return name === "ageMonths" ? quantity - gestationMonths : quantity;
}

/** One measurement as an observation, with its name. */
export interface NamedObservation extends Observation {
  readonly name: ObservedName;
  readonly value: number;
}

/** The quantities among the measurements, in order of entry. */
export function observeMeasurements(measurements: Measurements): NamedObservation[] {
  const observations: NamedObservation[] = [];
  for (const name of observedNames) {
    const value = measurements[name];
    if (value === undefined) continue;
    observations.push({
      name,
      quantity: quantityOfName[name],
      value,
      logValue: Math.log(quantityValue(name, value)),
    });
  }
  return observations;
}
