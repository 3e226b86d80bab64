import { type Centimetres, centimetres, type Months, months } from "../units/index.ts";
import { createGrowthStandard } from "./create-growth-standard.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import armCircumferenceTable from "./reference/mramba-2017-arm-circumference-for-age.json" with {
  type: "json",
};

/**
 * Mramba 2017: mid-upper-arm circumference, cm, for age 60-228 months. Made to carry on where WHO's arm
 * standard ends; so WHO's rule beyond 3 SD is applied here too. @source mramba-2017
 */
export const mramba2017ArmCircumferenceForAge: GrowthStandard<Months, Centimetres> =
  /* @__PURE__ */ createGrowthStandard({ table: armCircumferenceTable, index: months, value: centimetres });
