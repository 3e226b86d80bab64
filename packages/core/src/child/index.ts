export type { ChildReport } from "./child-report.ts";
export { type ChildInput, computeChild } from "./compute-child.ts";
