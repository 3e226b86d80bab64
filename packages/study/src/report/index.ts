export type { Block, ReportTable, StudyReport } from "./block.ts";
export { composeReport } from "./compose-report.ts";
export { ENGLISH_REPORT } from "./english-words.ts";
export { drawWithinBars } from "./figures/draw-within-bars.ts";
export { poolingTable } from "./pooling-table.ts";
export { type ReportFile, reportFiles } from "./report-files.ts";
export type { ReportInput } from "./report-input.ts";
export type { ReportWords } from "./report-words.ts";
export { zipReport } from "./zip-report.ts";
