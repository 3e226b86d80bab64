import {
  type Centimetres,
  centimetres,
  type Days,
  days,
  type Kilograms,
  type KilogramsPerSquareMetre,
  kilograms,
  kilogramsPerSquareMetre,
} from "../units/index.ts";
import { createGrowthStandard } from "./create-growth-standard.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import armCircumferenceTable from "./reference/who-2006-arm-circumference-for-age.json" with { type: "json" };
import bmiTable from "./reference/who-2006-bmi-for-age.json" with { type: "json" };
import headCircumferenceTable from "./reference/who-2006-head-circumference-for-age.json" with {
  type: "json",
};
import lengthHeightTable from "./reference/who-2006-length-height-for-age.json" with { type: "json" };
import weightForAgeTable from "./reference/who-2006-weight-for-age.json" with { type: "json" };
import weightForLengthTable from "./reference/who-2006-weight-for-length.json" with { type: "json" };

/** WHO Child Growth Standards 2006: weight, kg, for lying length 45-110 cm. @source who-growth-2006 */
export const who2006WeightForLength: GrowthStandard<Centimetres, Kilograms> =
  /* @__PURE__ */ createGrowthStandard({
    table: weightForLengthTable,
    index: centimetres,
    value: kilograms,
    window: {
      id: "who-2006-weight-for-length",
      index: { name: "lying length", unit: "cm", low: 45, high: 110 },
      shift: 0,
    },
  });

/**
 * WHO Child Growth Standards 2006: weight, kg, for standing height 65-120 cm. The table shares its file with
 * weight for length: the two are one curve, 0.7 cm apart. @source who-growth-2006
 */
export const who2006WeightForHeight: GrowthStandard<Centimetres, Kilograms> =
  /* @__PURE__ */ createGrowthStandard({
    table: weightForLengthTable,
    index: centimetres,
    value: kilograms,
    window: {
      id: "who-2006-weight-for-height",
      index: { name: "standing height", unit: "cm", low: 65, high: 120 },
      shift: 0.7,
    },
  });

/**
 * WHO Child Growth Standards 2006: lying length under 731 days, standing height from then on, cm, for age
 * 0-1826 days. @source who-growth-2006
 */
export const who2006LengthHeightForAge: GrowthStandard<Days, Centimetres> =
  /* @__PURE__ */ createGrowthStandard({ table: lengthHeightTable, index: days, value: centimetres });

/** WHO Child Growth Standards 2006: weight, kg, for age 0-1826 days. @source who-growth-2006 */
export const who2006WeightForAge: GrowthStandard<Days, Kilograms> = /* @__PURE__ */ createGrowthStandard({
  table: weightForAgeTable,
  index: days,
  value: kilograms,
});

/**
 * WHO Child Growth Standards 2006: body mass index, kg/m2, for age 0-1826 days, from lying length under
 * 731 days and standing height from then on. @source who-growth-2006
 */
export const who2006BmiForAge: GrowthStandard<Days, KilogramsPerSquareMetre> =
  /* @__PURE__ */ createGrowthStandard({ table: bmiTable, index: days, value: kilogramsPerSquareMetre });

/** WHO Child Growth Standards: head circumference, cm, for age 0-1826 days. @source who-growth-2006-head-arm */
export const who2006HeadCircumferenceForAge: GrowthStandard<Days, Centimetres> =
  /* @__PURE__ */ createGrowthStandard({ table: headCircumferenceTable, index: days, value: centimetres });

/**
 * WHO Child Growth Standards: mid-upper-arm circumference, cm, for age 91-1826 days.
 * @source who-growth-2006-head-arm
 */
export const who2006ArmCircumferenceForAge: GrowthStandard<Days, Centimetres> =
  /* @__PURE__ */ createGrowthStandard({ table: armCircumferenceTable, index: days, value: centimetres });
