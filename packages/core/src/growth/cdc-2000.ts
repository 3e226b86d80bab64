import {
  type Centimetres,
  centimetres,
  type Kilograms,
  type KilogramsPerSquareMetre,
  kilograms,
  kilogramsPerSquareMetre,
  type Months,
  months,
} from "../units/index.ts";
import { createGrowthStandard } from "./create-growth-standard.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import bmiTable from "./reference/cdc-2000-bmi-for-age.json" with { type: "json" };
import headTable from "./reference/cdc-2000-head-circumference-for-age.json" with { type: "json" };
import lengthTable from "./reference/cdc-2000-length-for-age.json" with { type: "json" };
import statureTable from "./reference/cdc-2000-stature-for-age.json" with { type: "json" };
import weightForAgeTable from "./reference/cdc-2000-weight-for-age.json" with { type: "json" };
import weightForLengthTable from "./reference/cdc-2000-weight-for-length.json" with { type: "json" };
import weightForStatureTable from "./reference/cdc-2000-weight-for-stature.json" with { type: "json" };

/** CDC 2000: weight, kg, for age 0-240 months. @source cdc-growth-2000 */
export const cdc2000WeightForAge: GrowthStandard<Months, Kilograms> = /* @__PURE__ */ createGrowthStandard({
  table: weightForAgeTable,
  index: months,
  value: kilograms,
});

/** CDC 2000: lying length, cm, for age 0-36.5 months. @source cdc-growth-2000 */
export const cdc2000LengthForAge: GrowthStandard<Months, Centimetres> = /* @__PURE__ */ createGrowthStandard({
  table: lengthTable,
  index: months,
  value: centimetres,
});

/** CDC 2000: standing height, cm, for age 23.5-240 months. @source cdc-growth-2000 */
export const cdc2000StatureForAge: GrowthStandard<Months, Centimetres> = /* @__PURE__ */ createGrowthStandard(
  {
    table: statureTable,
    index: months,
    value: centimetres,
  },
);

/** CDC 2000: body mass index, kg/m2, for age 23.5-240 months. @source cdc-growth-2000 */
export const cdc2000BmiForAge: GrowthStandard<Months, KilogramsPerSquareMetre> =
  /* @__PURE__ */ createGrowthStandard({ table: bmiTable, index: months, value: kilogramsPerSquareMetre });

/** CDC 2000: head circumference, cm, for age 0-36.5 months. @source cdc-growth-2000 */
export const cdc2000HeadCircumferenceForAge: GrowthStandard<Months, Centimetres> =
  /* @__PURE__ */ createGrowthStandard({ table: headTable, index: months, value: centimetres });

/** CDC 2000: weight, kg, for lying length 45-103.5 cm. @source cdc-growth-2000 */
export const cdc2000WeightForLength: GrowthStandard<Centimetres, Kilograms> =
  /* @__PURE__ */ createGrowthStandard({ table: weightForLengthTable, index: centimetres, value: kilograms });

/** CDC 2000: weight, kg, for standing height 77-121.5 cm. @source cdc-growth-2000 */
export const cdc2000WeightForStature: GrowthStandard<Centimetres, Kilograms> =
  /* @__PURE__ */ createGrowthStandard({
    table: weightForStatureTable,
    index: centimetres,
    value: kilograms,
  });
