export { assessQuality, type FlagCount, type GroupQuality, type StudyQuality } from "./assess-quality.ts";
export { type DigitPreference, digitPreference } from "./digit-preference.ts";
export type { Duplicates } from "./find-duplicates.ts";
export type { RowSlip, SlipSearch } from "./find-slips.ts";
export type { WhoIndicator } from "./who-flags.ts";
