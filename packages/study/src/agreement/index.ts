export {
  type IntraclassCorrelations,
  intraclassCorrelations,
  type ReadingMeanSquares,
} from "./intraclass-correlations.ts";
export { measurementErrorsFromReadings, type SiteReadings } from "./measurement-errors-from-readings.ts";
export { type RepeatedLimits, type RepeatedReadings, repeatedLimits } from "./repeated-limits.ts";
export { type TechnicalError, technicalError } from "./technical-error.ts";
export { type Kappa, weightedKappa } from "./weighted-kappa.ts";
