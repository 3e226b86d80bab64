export { daysToMonths, monthsToDays } from "./age.ts";
export { bodyMassIndex } from "./body-mass-index.ts";
export {
  cdc2000BmiForAge,
  cdc2000HeadCircumferenceForAge,
  cdc2000LengthForAge,
  cdc2000StatureForAge,
  cdc2000WeightForAge,
  cdc2000WeightForLength,
  cdc2000WeightForStature,
} from "./cdc-2000.ts";
export type { GrowthIssue, GrowthStandard, Sex } from "./growth-standard.ts";
export { type HeightAgeIssue, heightAge } from "./height-age.ts";
export type { Lms } from "./lms.ts";
export { median } from "./median.ts";
export { mramba2017ArmCircumferenceForAge } from "./mramba-2017.ts";
export {
  heightToLength,
  lengthToHeight,
  type Stance,
  statureForTables,
  type TableStature,
} from "./stature-for-tables.ts";
export { valueAtZ } from "./value-at-z.ts";
export {
  who2006ArmCircumferenceForAge,
  who2006BmiForAge,
  who2006HeadCircumferenceForAge,
  who2006LengthHeightForAge,
  who2006WeightForAge,
  who2006WeightForHeight,
  who2006WeightForLength,
} from "./who-2006.ts";
export { who2006WeightForStature } from "./who-2006-weight-for-stature.ts";
export { who2007BmiForAge, who2007HeightForAge, who2007WeightForAge } from "./who-2007.ts";
export { whoBmiForAge, whoHeightForAge, whoWeightForAge } from "./who-joined.ts";
export { zScore } from "./z-score.ts";
