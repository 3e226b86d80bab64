export type { ChildReport } from "./child-report.ts";
export { type ChildInput, computeChild, computeReport, type SheetChoices } from "./compute-child.ts";
