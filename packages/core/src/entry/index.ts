export { type CombinedReadings, combineReadings, type RepeatedField } from "./combine-readings.ts";
export type { ChoiceField, EntryField, EntryValues, QuantityField } from "./entry-field.ts";
export type {
  EntryIssue,
  EntryNotice,
  Proposal,
  SwapProposal,
  UnitProposal,
  ValuesProposal,
} from "./entry-issue.ts";
export { HUMAN_LIMITS, type Limits } from "./human-limits.ts";
export { proposalOfSlip } from "./proposal-of-slip.ts";
export { type BurnPercentIssue, readBurnPercent } from "./read-burn-percent.ts";
export type { DecimalMark } from "./read-decimal.ts";
export { type Entry, readEntry } from "./read-entry.ts";
export { type EntryTexts, type MeasurementsRead, readMeasurements } from "./read-measurements.ts";
export type { ReadOptions } from "./read-quantity.ts";
export { FIELD_UNIT, isAge, type UnitSymbol } from "./unit-table.ts";
