import type { Quantity } from "./body-reference.ts";
import type { MeasurementName } from "./measurements.ts";

/** Months from conception to birth. Age enters the model from conception, so that a newborn's age has a logarithm. */
const gestationMonths = 9;

/** The names of the measurements that are quantities of the model. */
export type MeasuredName = Extract<
  MeasurementName,
  "lengthCm" | "armMm" | "waistCm" | "thighCm" | "calfCm" | "headCm" | "ageMonths"
>;

/** The quantity each such measurement is, in order of entry. */
export const quantityOfName: Readonly<Record<MeasuredName, Quantity>> = {
  lengthCm: "length",
  armMm: "arm",
  waistCm: "waist",
  thighCm: "thigh",
  calfCm: "calf",
  headCm: "head",
  ageMonths: "age",
};

/**
 * The number the model works with: the measurement itself, except that age counts from conception.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { quantityValue } from "@steelyard/core/body";
 *
 * assert.equal(quantityValue("ageMonths", 3), 12);
 * assert.equal(quantityValue("armMm", 190), 190);
 * ```
 */
export function quantityValue(name: MeasuredName, value: number): number {
  return name === "ageMonths" ? value + gestationMonths : value;
}

/** The measurement behind a number of the model: the inverse of `quantityValue`. */
export function measuredValue(name: MeasuredName, quantity: number): number {
  return name === "ageMonths" ? quantity - gestationMonths : quantity;
}
