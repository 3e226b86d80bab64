export { assessQuality, type FlagCount, type GroupQuality, type StudyQuality } from "./assess-quality.ts";
export { chiSquaredTail9, type DigitPreference, digitPreference } from "./digit-preference.ts";
export type { Duplicates } from "./find-duplicates.ts";
export type { RowSlip, SlipSearch } from "./find-slips.ts";
export { WHO_FLAG_LIMITS, type WhoIndicator, type WhoScores, whoScores } from "./who-flags.ts";
