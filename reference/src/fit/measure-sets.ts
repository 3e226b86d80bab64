import type { Measurements } from "@steelyard/core/body";
import { centimetres, millimetres, months } from "@steelyard/core/units";
import type { FitChild } from "./fit-child.ts";

/** A child of the fit or of a survey: whatever of these was measured. */
export type MeasuredChild = Omit<FitChild, "source" | "childId" | "weight" | "sex"> & {
  readonly sex?: FitChild["sex"];
};

export interface MeasureSet {
  readonly name: string;
  /** Undefined where the child lacks one of the measurements. */
  readonly measure: (child: MeasuredChild) => Measurements | undefined;
}

type Part = "length" | "arm" | "sex" | "age" | "waist" | "thigh" | "calf" | "head";

/** The sets of measurements the logs report, from least to most. */
export const measureSets: readonly MeasureSet[] = [
  ["age"],
  ["age", "sex"],
  ["age", "arm"],
  ["length"],
  ["length", "age", "sex"],
  ["length", "arm"],
  ["length", "arm", "sex"],
  ["length", "arm", "sex", "age"],
  ["length", "waist", "sex"],
  ["length", "arm", "sex", "waist"],
  ["length", "arm", "sex", "calf"],
  ["length", "arm", "sex", "thigh"],
  ["length", "arm", "sex", "waist", "thigh"],
  ["length", "arm", "sex", "waist", "thigh", "calf", "age"],
  ["length", "arm", "head"],
  ["length", "arm", "sex", "head"],
].map((parts) => ({ name: parts.join(" + "), measure: measureOf(parts as Part[]) }));

/** The set of this name. Throws a `RangeError` when there is none. */
export function measureSet(name: string): MeasureSet {
  const found = measureSets.find((set) => set.name === name);
  if (found === undefined)
    throw new RangeError(`Cannot measure as the set must be one of the log's: current value is ${name}`);
  return found;
}

function measureOf(parts: readonly Part[]): MeasureSet["measure"] {
  return (child) => {
    let measurements: Measurements = {};
    for (const part of parts) {
      const more = measured(child, part);
      if (more === undefined) return undefined;
      measurements = { ...measurements, ...more };
    }
    return measurements;
  };
}

function measured(child: MeasuredChild, part: Part): Measurements | undefined {
  switch (part) {
    case "length":
      return { lengthCm: centimetres(child.lengthCm) };
    case "sex":
      return child.sex === undefined ? undefined : { sex: child.sex };
    case "arm":
      return child.armMm === undefined ? undefined : { armMm: millimetres(child.armMm) };
    case "age":
      return child.ageMonths === undefined ? undefined : { ageMonths: months(child.ageMonths) };
    case "waist":
      return child.waistCm === undefined ? undefined : { waistCm: centimetres(child.waistCm) };
    case "thigh":
      return child.thighCm === undefined ? undefined : { thighCm: centimetres(child.thighCm) };
    case "calf":
      return child.calfCm === undefined ? undefined : { calfCm: centimetres(child.calfCm) };
    case "head":
      return child.headCm === undefined ? undefined : { headCm: centimetres(child.headCm) };
  }
}
