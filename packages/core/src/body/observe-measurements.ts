import type { Quantity } from "./body-reference.ts";
import { growForward } from "./grow-forward.ts";
import type { IndexedModel } from "./indexed-model.ts";
import { type MeasurementErrors, referenceTechnique } from "./measurement-errors.ts";
import type { MeasurementName, Measurements, Sex } from "./measurements.ts";
import type { Observation } from "./observed-normal.ts";
import { type MeasuredName, quantityOfName, quantityValue } from "./quantity-value.ts";

/** One thing that is known, as an observation of the joint model. */
export interface NamedObservation {
  readonly name: MeasurementName;
  readonly observation: Observation;
  /** The value as given, in the unit of the measurement; absent for a judgement such as build. */
  readonly value?: number;
  /** How far it is believed against the others: a tape before a date of birth, a scale before a word, a word before the eye. */
  readonly trust: number;
}

const measuredNames = Object.keys(quantityOfName) as readonly MeasuredName[];

/**
 * Everything known of the child besides its sex and the index itself, as observations with their own errors.
 *
 * `wholeBody` is 1 - the share of a missing limb: weights that were stated or read are of the body as it is.
 */
export function observeMeasurements(given: {
  measurements: Measurements;
  index: Quantity;
  errors: MeasurementErrors;
  byAge: IndexedModel;
  sexes: readonly Sex[];
  wholeBody: number;
}): NamedObservation[] {
  const { measurements, index, errors, byAge, sexes, wholeBody } = given;
  const observations: NamedObservation[] = [];
  for (const name of measuredNames) {
    const value = measurements[name];
    if (value === undefined) continue;
    const quantity = quantityOfName[name];
    if (quantity === index) continue;
    const logVariance = name === "armMm" ? armVariance(measurements, errors) / (value * value) : 0;
    observations.push({
      name,
      value,
      trust: name === "ageMonths" ? 3 : 4,
      observation: { quantity, logValue: Math.log(quantityValue(name, value)), logVariance },
    });
  }
  const { earlier, ageMonths, carerKg, build } = measurements;
  if (earlier !== undefined && ageMonths !== undefined && ageMonths >= earlier.ageMonths) {
    const grown = growForward({ byAge, sexes, earlier, ageMonths });
    const logValue = grown.logValue - Math.log(wholeBody);
    observations.push({
      name: "earlier",
      value: Math.exp(grown.logValue),
      trust: 2,
      observation: { quantity: "weight", ...grown, logValue },
    });
  }
  if (carerKg !== undefined) {
    const observation = {
      quantity: "weight",
      logValue: Math.log(carerKg / wholeBody),
      logVariance: errors.carerLogSd ** 2,
    } as const;
    observations.push({ name: "carerKg", value: carerKg, trust: 1, observation });
  }
  if (build !== undefined) {
    observations.push({
      name: "build",
      trust: 0,
      observation: { quantity: "weight", ...errors.build[build] },
    });
  }
  return observations;
}

/** Variance of the arm beyond the technique of the fit, mm^2: below 0 when several good readings were averaged. */
function armVariance(
  { armStepMm = 0 as never, armReadings = 1 }: Measurements,
  { armSdMm }: MeasurementErrors,
): number {
  // A reading to a step is uniform within it: variance step^2 / 12.
  const own = (armSdMm ** 2 + armStepMm ** 2 / 12) / armReadings;
  return own - referenceTechnique.armSdMm ** 2;
}
