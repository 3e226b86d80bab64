export type { Interval } from "../accuracy/interval.ts";
export {
  type AnalyseStudyOptions,
  analyseStudy,
  type MethodAccuracy,
  type StratumAccuracy,
  type StudyAnalysis,
} from "./analyse-study.ts";
export type { ErrorSummary, Limits } from "./error-summary.ts";
export { MADE_STRATA } from "./strata.ts";
export type { Proportion } from "./wilson-interval.ts";
