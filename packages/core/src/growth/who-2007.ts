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
import bmiTable from "./reference/who-2007-bmi-for-age.json" with { type: "json" };
import heightTable from "./reference/who-2007-height-for-age.json" with { type: "json" };
import weightTable from "./reference/who-2007-weight-for-age.json" with { type: "json" };

/** WHO Reference 2007: standing height, cm, for age 61-228 months. @source who-growth-2007 */
export const who2007HeightForAge: GrowthStandard<Months, Centimetres> = /* @__PURE__ */ createGrowthStandard({
  table: heightTable,
  index: months,
  value: centimetres,
});

/** WHO Reference 2007: body mass index, kg/m2, for age 61-228 months. @source who-growth-2007 */
export const who2007BmiForAge: GrowthStandard<Months, KilogramsPerSquareMetre> =
  /* @__PURE__ */ createGrowthStandard({ table: bmiTable, index: months, value: kilogramsPerSquareMetre });

/** WHO Reference 2007: weight, kg, for age 61-120 months. @source who-growth-2007 */
export const who2007WeightForAge: GrowthStandard<Months, Kilograms> = /* @__PURE__ */ createGrowthStandard({
  table: weightTable,
  index: months,
  value: kilograms,
});
