import { unfoldMedians } from "../growth/growth-table.ts";
import { piecewiseLinear } from "../growth/piecewise-linear.ts";
import weightForLengthTable from "../growth/reference/who-2006-weight-for-length.json" with { type: "json" };
import bmiTable from "../growth/reference/who-2007-bmi-for-age.json" with { type: "json" };
import heightTable from "../growth/reference/who-2007-height-for-age.json" with { type: "json" };
import { lyingLessStandingCm } from "../growth/stature-for-tables.ts";

/** Lying length covered, cm: WHO's weight-for-length begins at 45; 205 is past any child's length. */
export const shortestCm = 45;
export const tallestCm = 205;

/** Up to here the WHO 2006 median weight for length/height holds; its table ends at 120.7 cm lying. */
const joinFromCm = 120;
/** From here on the WHO 2007 index holds alone. Why the join is 17 cm wide: docs/decisions/0003. */
const joinToCm = 137;
/**
 * Standing height, cm, from which the index of a child of unknown age goes straight to that of 19 years.
 * The median height hardly grows in the last years, so that a millimetre would stand for months of age.
 */
const straightFromCm = { m: 170, f: 155 } as const;

/** Median index by age and by height-age of one sex. */
interface IndexCurve {
  readonly ageMonths: Float64Array;
  readonly heightCm: Float64Array;
  readonly bmi: Float64Array;
  /** The straight end of the curve for unknown age. */
  readonly straight: { readonly heightCm: readonly number[]; readonly bmi: readonly number[] };
}

/** What ideal weight is computed from, for one sex: made on first use. */
export interface IdealWeightCurves {
  /** Ideal weight at each millimetre of lying length from `shortestCm` on, age unknown, kg. */
  readonly weightKg: Float64Array;
  readonly index: IndexCurve;
  /** The median weight at the beginning of the join, kg. */
  readonly joinKg: number;
}

/** Filled on first use and never changed after: a cache of pure results. */
const curvesBySex: { m?: IdealWeightCurves; f?: IdealWeightCurves } = {};

export function idealWeightCurves(sex: "m" | "f"): IdealWeightCurves {
  curvesBySex[sex] ??= makeCurves(sex);
  return curvesBySex[sex];
}

/** Ideal weight by the median index at an age (61-228 months; younger and older as at these ends), kg. */
export function weightAtAge(
  { weightKg, index, joinKg }: IdealWeightCurves,
  lengthCm: number,
  ageMonths: number,
): number {
  if (lengthCm <= joinFromCm) return atMillimetre(weightKg, lengthCm);
  const bmi = piecewiseLinear(index.ageMonths, index.bmi, ageMonths);
  return joined(lengthCm, bmi, bmi, joinKg);
}

/** Linear between millimetres, as WHO interpolates its rows. */
export function atMillimetre(weightKg: Float64Array, lengthCm: number): number {
  const place = (lengthCm - shortestCm) * 10;
  const below = Math.min(Math.floor(place), weightKg.length - 2);
  const from = weightKg[below] as number;
  return from + (place - below) * ((weightKg[below + 1] as number) - from);
}

function makeCurves(sex: "m" | "f"): IdealWeightCurves {
  const index = indexCurve(sex);
  // A row per millimetre of lying length from 45 cm on: weight for length, and past its end weight for height,
  // which is the same curve 0.7 cm apart, so that going from one to the other makes no step.
  const medianKg = unfoldMedians(weightForLengthTable, sex);
  const joinKg = medianKg[(joinFromCm - shortestCm) * 10] as number;
  const joinBmi = bmiAtHeight(sex, index, joinFromCm - lyingLessStandingCm);
  const weightKg = new Float64Array((tallestCm - shortestCm) * 10 + 1);
  for (let millimetre = 0; millimetre < weightKg.length; millimetre++) {
    const lengthCm = (shortestCm * 10 + millimetre) / 10;
    weightKg[millimetre] =
      lengthCm <= joinFromCm
        ? (medianKg[millimetre] as number)
        : joined(lengthCm, bmiAtHeight(sex, index, lengthCm - lyingLessStandingCm), joinBmi, joinKg);
  }
  return { weightKg, index, joinKg };
}

/**
 * index x height^2, times a power of the ratio between the two rules at 120 cm that fades from 1 to 0 over
 * the join: so the curve leaves the first rule without a step and arrives at the second.
 */
function joined(lengthCm: number, bmi: number, joinBmi: number, joinKg: number): number {
  const byIndexKg = bmi * ((lengthCm - lyingLessStandingCm) / 100) ** 2;
  if (lengthCm >= joinToCm) return byIndexKg;
  const ratio = joinKg / (joinBmi * ((joinFromCm - lyingLessStandingCm) / 100) ** 2);
  return byIndexKg * ratio ** ((joinToCm - lengthCm) / (joinToCm - joinFromCm));
}

function indexCurve(sex: "m" | "f"): IndexCurve {
  const heightCm = unfoldMedians(heightTable, sex);
  const bmi = unfoldMedians(bmiTable, sex);
  return {
    ageMonths: bmi.map((_, row) => bmiTable.index.low + row),
    heightCm,
    bmi,
    straight: {
      heightCm: [straightFromCm[sex], heightCm.at(-1) as number],
      bmi: [piecewiseLinear(heightCm, bmi, straightFromCm[sex]), bmi.at(-1) as number],
    },
  };
}

/** The index at the height-age; along a straight line to that of 19 years where height has all but stopped. */
function bmiAtHeight(sex: "m" | "f", { heightCm, bmi, straight }: IndexCurve, atCm: number): number {
  return atCm <= straightFromCm[sex]
    ? piecewiseLinear(heightCm, bmi, atCm)
    : piecewiseLinear(straight.heightCm, straight.bmi, atCm);
}
