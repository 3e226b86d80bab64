export {
  type BootstrapInput,
  type BootstrapInterval,
  bootstrapClusters,
  type SumStatistic,
} from "./bootstrap-clusters.ts";
export { type AccuracyFigure, accuracyStatistics, clusterColumns, clusterSums } from "./cluster-columns.ts";
export { createGenerator, type Generator } from "./create-generator.ts";
