export { adjustedWeight } from "./adjusted-weight.ts";
export { type BodyAt, type BodyModel, createBodyModel, modelLengthCm, pairKey } from "./body-model.ts";
export {
  type BodyReference,
  type CurveCoefficients,
  type Quantity,
  quantities,
  type Residual,
  type SexReference,
} from "./body-reference.ts";
export { bodySurfaceArea } from "./body-surface-area.ts";
export { type BoxCox, boxCoxLogValue, boxCoxSlope, boxCoxZ, straightFrom } from "./box-cox.ts";
export {
  type SplineBasis,
  type SplineWeights,
  splineSize,
  splineValue,
  splineWeights,
} from "./cubic-spline.ts";
export { defaultBodyModel } from "./default-body-model.ts";
export { cumulativeWeight, type EstimateOptions, estimateWeight } from "./estimate-weight.ts";
export { type IdealWeightIssue, idealWeight } from "./ideal-weight.ts";
export { leanWeight } from "./lean-weight.ts";
export type { Build, MeasurementName, Measurements, Posture, Sex } from "./measurements.ts";
export { normalCumulative } from "./normal-cumulative.ts";
export { quantityValue } from "./observe-measurements.ts";
export { studentQuantile } from "./student-quantile.ts";
export { type StudentSeries, studentSeries } from "./student-series.ts";
export { densityOfComponents } from "./weight-distribution.ts";
export type { BodyIssue, BodyWarning, UnitSlip, WeightComponent, WeightEstimate } from "./weight-estimate.ts";
