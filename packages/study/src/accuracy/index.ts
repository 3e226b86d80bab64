export { type Concordance, concordance } from "./concordance.ts";
export type { Interval } from "./interval.ts";
export { type LimitsOfAgreement, type LimitsOptions, limitsOfAgreement } from "./limits-of-agreement.ts";
export { type FittedLine, type RegressionLimits, regressionLimits } from "./regression-limits.ts";
