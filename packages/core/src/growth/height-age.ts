import { err, ok, type Result } from "../result.ts";
import { type Centimetres, centimetres, days, type Months, months } from "../units/index.ts";
import { daysToMonths } from "./age.ts";
import type { Sex } from "./growth-standard.ts";
import { piecewiseLinear } from "./piecewise-linear.ts";
import { requireFinite, requireSex } from "./require.ts";
import { heightToLength } from "./stature-for-tables.ts";
import { who2006LengthHeightForAge } from "./who-2006.ts";
import { who2007HeightForAge } from "./who-2007.ts";

/** The length lies outside the medians of WHO 2006 and 2007, birth to 19 years. */
export interface HeightAgeIssue {
  readonly type: "length-out-of-range";
  readonly lengthCm: number;
  readonly low: number;
  readonly high: number;
}

/** Median lying length by age, ascending in both. */
interface MedianLengths {
  readonly ageMonths: readonly number[];
  readonly lengthCm: readonly number[];
}

const mediansBySex = new Map<Sex | undefined, MedianLengths>();

/**
 * Height-age in months: the age at which the median child is as long as this one.
 *
 * Inverts the median length/height for age of WHO 2006 to 1826 days, WHO 2007 from 61 months, in lying length
 * throughout (height + 0.7 cm), linear between rows. Sex unknown: the median is the mean of both sexes.
 *
 * Inputs: `lengthCm`, lying length, from the median at birth to that at 19 years (boys 49.8842-177.2432,
 * girls 49.1477-163.8548). Gives months, or `length-out-of-range` with the range. Throws a `RangeError` on NaN.
 *
 * @source who-growth-2006
 * @source who-growth-2007
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { heightAge } from "@steelyard/core/growth";
 * import { centimetres } from "@steelyard/core/units";
 *
 * const boy = heightAge({ lengthCm: centimetres(116.6509), sex: "m" });
 * assert.ok(boy.ok && Math.abs(boy.value - 72) < 0.001);
 * ```
 */
export function heightAge({
  lengthCm,
  sex,
}: {
  readonly lengthCm: Centimetres;
  readonly sex?: Sex;
}): Result<Months, HeightAgeIssue> {
  requireFinite("find the height-age", { lengthCm });
  if (sex !== undefined) requireSex("find the height-age", sex);
  const medians = mediansBySex.get(sex) ?? medianLengths(sex);
  mediansBySex.set(sex, medians);
  const low = medians.lengthCm.at(0) as number;
  const high = medians.lengthCm.at(-1) as number;
  if (lengthCm < low || lengthCm > high) return err({ type: "length-out-of-range", lengthCm, low, high });
  return ok(months(piecewiseLinear(medians.lengthCm, medians.ageMonths, lengthCm)));
}

function medianLengths(sex: Sex | undefined): MedianLengths {
  const ageMonths: number[] = [];
  const lengthCm: number[] = [];
  const under5 = who2006LengthHeightForAge;
  for (let day = 0; day <= under5.index.high; day++) {
    const medianCm = meanMedian(sex, (each) => under5.lms({ sex: each, at: days(day) }).m);
    ageMonths.push(daysToMonths(days(day)));
    lengthCm.push(day < 731 ? medianCm : heightToLength(medianCm));
  }
  const from5 = who2007HeightForAge;
  for (let month: number = from5.index.low; month <= from5.index.high; month++) {
    const medianCm = meanMedian(sex, (each) => from5.lms({ sex: each, at: months(month) }).m);
    ageMonths.push(month);
    lengthCm.push(heightToLength(medianCm));
  }
  return { ageMonths, lengthCm };
}

function meanMedian(sex: Sex | undefined, medianOf: (sex: Sex) => number): Centimetres {
  return centimetres(sex ? medianOf(sex) : (medianOf("m") + medianOf("f")) / 2);
}
