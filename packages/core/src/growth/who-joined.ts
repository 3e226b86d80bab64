import type { Centimetres, Kilograms, KilogramsPerSquareMetre, Months } from "../units/index.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import { joinGrowthStandards } from "./join-growth-standards.ts";
import { who2006BmiForAge, who2006LengthHeightForAge, who2006WeightForAge } from "./who-2006.ts";
import { who2007BmiForAge, who2007HeightForAge, who2007WeightForAge } from "./who-2007.ts";

/**
 * WHO 2006 and 2007 joined: lying length under 731 days, standing height from then on, cm, for age
 * 0-228 months. @source who-growth-2006 @source who-growth-2007
 */
export const whoHeightForAge: GrowthStandard<Months, Centimetres> = /* @__PURE__ */ joinGrowthStandards({
  id: "who-height-for-age",
  under5: who2006LengthHeightForAge,
  from5: who2007HeightForAge,
});

/** WHO 2006 and 2007 joined: weight, kg, for age 0-120 months. @source who-growth-2007 */
export const whoWeightForAge: GrowthStandard<Months, Kilograms> = /* @__PURE__ */ joinGrowthStandards({
  id: "who-weight-for-age",
  under5: who2006WeightForAge,
  from5: who2007WeightForAge,
});

/** WHO 2006 and 2007 joined: body mass index, kg/m2, for age 0-228 months. @source who-growth-2007 */
export const whoBmiForAge: GrowthStandard<Months, KilogramsPerSquareMetre> =
  /* @__PURE__ */ joinGrowthStandards({
    id: "who-bmi-for-age",
    under5: who2006BmiForAge,
    from5: who2007BmiForAge,
  });
