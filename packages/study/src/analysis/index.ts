export {
  type AnalyseStudyOptions,
  analyseStudy,
  type MethodAccuracy,
  type StratumAccuracy,
  type StudyAnalysis,
} from "./analyse-study.ts";
export { type ErrorSummary, type Interval, type Limits, summariseErrors } from "./error-summary.ts";
export { MADE_STRATA, strataOf } from "./strata.ts";
export { type Proportion, wilsonInterval } from "./wilson-interval.ts";
