import {
  type GrowthStandard,
  monthsToDays,
  type Stance,
  who2006WeightForStature,
  whoBmiForAge,
  whoHeightForAge,
  whoWeightForAge,
  zScore,
} from "@steelyard/core/growth";
import {
  centimetres,
  days,
  kilograms,
  kilogramsPerSquareMetre,
  type Months,
  months,
} from "@steelyard/core/units";
import { type StudyTable, wordAt } from "../table/study-table.ts";

export type WhoIndicator = "weight-for-age" | "length-for-age" | "weight-for-length" | "bmi-for-age";

/** Beyond these z-scores a value is flagged as biologically implausible. @source who-anthro */
const WHO_FLAG_LIMITS: Readonly<Record<WhoIndicator, readonly [low: number, high: number]>> = {
  "weight-for-age": [-6, 5],
  "length-for-age": [-6, 6],
  "weight-for-length": [-5, 5],
  "bmi-for-age": [-5, 5],
};

/** z-scores of every row by indicator; NaN where age, sex or a measurement is missing or outside the tables. */
export type WhoScores = Readonly<Record<WhoIndicator, Float64Array>>;

/**
 * WHO z-scores of every row: weight and length for age, weight for length under 120 cm, body mass index for age. Length under 24 months,
 * height from then on (height = length - 0.7 cm). Sex is needed, and an age but for weight for length.
 *
 * @source who-anthro
 * @source who-growth-2006
 * @source who-growth-2007
 */
export function whoScores(table: StudyTable): WhoScores {
  const scores = {
    "weight-for-age": empty(table),
    "length-for-age": empty(table),
    "weight-for-length": empty(table),
    "bmi-for-age": empty(table),
  };
  const weights = table.numbers.get("weightKg");
  const lengths = table.numbers.get("lengthCm");
  const ages = table.numbers.get("ageMonths");
  const sexes = table.words.get("sex");
  for (let row = 0; row < table.rows; row++) {
    const sex = wordAt(sexes, row) as "m" | "f" | undefined;
    if (sex === undefined) continue;
    const weight = known(weights, row);
    const length = known(lengths, row);
    const age = known(ages, row);
    const standing = age !== undefined && age >= 24;
    const cm = length === undefined ? undefined : standing ? length - 0.7 : length;
    const put = <I extends number, V extends number>(
      indicator: WhoIndicator,
      standard: GrowthStandard<I, V>,
      at: I,
      value: V,
    ): void => {
      const z = zScore({ standard, sex, at, value });
      if (z.ok) scores[indicator][row] = z.value;
    };
    if (age !== undefined && age >= 0) {
      const at: Months = months(age);
      if (weight !== undefined) put("weight-for-age", whoWeightForAge, at, kilograms(weight));
      if (cm !== undefined) put("length-for-age", whoHeightForAge, at, centimetres(cm));
      if (cm !== undefined && weight !== undefined)
        put("bmi-for-age", whoBmiForAge, at, kilogramsPerSquareMetre(weight / (cm / 100) ** 2));
    }
    if (length !== undefined && weight !== undefined) {
      const stance: Stance = "lying";
      const ageDays = age === undefined || age < 0 ? {} : { ageDays: days(monthsToDays(months(age))) };
      const { standard, at } = who2006WeightForStature({ cm: centimetres(length), stance, ...ageDays });
      put("weight-for-length", standard, at, kilograms(weight));
    }
  }
  return scores;
}

export function isFlagged(indicator: WhoIndicator, z: number): boolean {
  const [low, high] = WHO_FLAG_LIMITS[indicator];
  return z < low || z > high;
}

function known(values: Float64Array | undefined, row: number): number | undefined {
  const value = values?.[row];
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

function empty({ rows }: StudyTable): Float64Array {
  return new Float64Array(rows).fill(Number.NaN);
}
