export { adjustPValues } from "./adjust-p-values.ts";
export {
  comparePairedErrors,
  type PairedErrorComparison,
  type PairedTest,
} from "./compare-paired-errors.ts";
export { type McNemar, mcnemar } from "./mcnemar.ts";
export { type NonInferiority, testNonInferiority } from "./non-inferiority.ts";
export { countPairs, type PairedCounts } from "./paired-counts.ts";
export { pairedDifference } from "./paired-difference.ts";
