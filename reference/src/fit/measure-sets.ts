import type { Measurements } from "@steelyard/core/body";
import { centimetres, millimetres, months } from "@steelyard/core/units";
import type { FitChild } from "./select-children.ts";

export type MeasureSet = readonly [name: string, measure: (child: FitChild) => Measurements | undefined];

const lengthOnly = (child: FitChild): Measurements => ({ lengthCm: centimetres(child.lengthCm) });
const withArm = (child: FitChild): Measurements => ({
  ...lengthOnly(child),
  armMm: millimetres(child.armMm),
});
const withSex = (child: FitChild): Measurements => ({ ...withArm(child), sex: child.sex });
const withWaist = (child: FitChild): Measurements | undefined =>
  child.waistCm === undefined ? undefined : { ...withSex(child), waistCm: centimetres(child.waistCm) };

/** The sets of measurements the log reports, from least to most. */
export const measureSets: readonly MeasureSet[] = [
  ["length", lengthOnly],
  ["length + arm", withArm],
  ["length + arm + sex", withSex],
  [
    "length + arm + sex + age",
    (child) =>
      child.ageMonths === undefined
        ? undefined
        : { ...withSex(child), ageMonths: months(child.ageMonths + 0.5) },
  ],
  ["length + arm + sex + waist", withWaist],
  [
    "length + arm + sex + waist + thigh",
    (child) => {
      const measured = withWaist(child);
      if (measured === undefined || child.thighCm === undefined) return undefined;
      return { ...measured, thighCm: centimetres(child.thighCm) };
    },
  ],
  [
    "length + arm + sex + head",
    (child) =>
      child.headCm === undefined ? undefined : { ...withSex(child), headCm: centimetres(child.headCm) },
  ],
];
