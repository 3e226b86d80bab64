export { type AgeBasis, ageParts, ageWarnings, yearsOf } from "./age-basis.ts";
export { type ChildSize, type ChildSizeInput, childSize } from "./child-size.ts";
export type {
  LookupAnswer,
  LookupGap,
  LookupGapLine,
  LookupRest,
  LookupValue,
  LookupWarning,
} from "./lookup-answer.ts";
export { COMMON_PRACTICE, cite, type LookupSource } from "./lookup-source.ts";
export type { ChosenBecause, LookupQuantity, LookupStep, LookupUnit, Span } from "./lookup-step.ts";
export { NEWBORN_MONTHS } from "./newborn.ts";
export { atMost, type Band, bandAt, type LinearRule, linear, measurableMl, nearestOf } from "./rules.ts";
