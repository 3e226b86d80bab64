export { type ExamineStudyOptions, examineStudy } from "./examine-study.ts";
export type {
  ClusterBootstrap,
  ClusteredAccuracy,
  MethodConsequence,
  MethodRegression,
  SiteLearning,
  StudyFindings,
} from "./study-findings.ts";
