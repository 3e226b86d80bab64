export type { ChildReport } from "./child-report.ts";
