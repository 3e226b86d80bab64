export { adjustedWeight } from "./adjusted-weight.ts";
export { bendOf, bendTerms } from "./bend-of.ts";
export { type BodyModel, createBodyModel } from "./body-model.ts";
export {
  type BodyReference,
  type CurveCoefficients,
  type ModelIndex,
  type Quantity,
  quantities,
  type Residual,
  type SexReference,
} from "./body-reference.ts";
export { bodySurfaceArea } from "./body-surface-area.ts";
export { type BoxCox, boxCoxLogValue, boxCoxSlope, boxCoxZ, straightFrom } from "./box-cox.ts";
export {
  type CalibrateOptions,
  type Calibration,
  type CalibrationAgreement,
  type CalibrationIssue,
  calibrateSite,
  fewestChildren,
} from "./calibrate-site.ts";
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
export { type BodyAt, createIndexedModel, type IndexedModel, pairKey } from "./indexed-model.ts";
export { leanWeight } from "./lean-weight.ts";
export { lengthFromSegment, type SegmentIssue, type SegmentLength } from "./length-from-segment.ts";
export {
  defaultMeasurementErrors,
  type MeasurementErrors,
  referenceMeasurementErrors,
  referenceTechnique,
} from "./measurement-errors.ts";
export type {
  Build,
  EarlierWeight,
  MeasurementName,
  Measurements,
  MissingLimb,
  Posture,
  Sex,
} from "./measurements.ts";
export { type NextMeasurement, nextMeasurements } from "./next-measurement.ts";
export { normalCumulative } from "./normal-cumulative.ts";
export { quantityValue } from "./quantity-value.ts";
export type { FieldFault } from "./read-fields.ts";
export { readMeasurementErrors } from "./read-measurement-errors.ts";
export {
  type ReadSiteProfileOptions,
  readSiteProfile,
  type SiteProfileIssue,
} from "./read-site-profile.ts";
export { type RecogniseOptions, recogniseSlips } from "./recognise-slips.ts";
export { type ScoredChild, scoreRows, type WeighedChild } from "./score-rows.ts";
export { type PopulationShift, referenceSite, type SiteProfile, uncalibratedSite } from "./site-profile.ts";
export type { Slip, SlipChange, SlipKind, SlipName, SlipUnit } from "./slip.ts";
export {
  type LeftOutRows,
  type SiteEvidence,
  type SiteIdentity,
  type StoredSiteProfile,
  siteProfileFormat,
} from "./stored-site-profile.ts";
export { studentQuantile } from "./student-quantile.ts";
export { type StudentSeries, studentSeries } from "./student-series.ts";
export { type ChildWeights, type EstimatedChild, weighChild } from "./weigh-child.ts";
export { densityOfComponents } from "./weight-distribution.ts";
export type { BodyIssue, BodyWarning, UnitSlip, WeightComponent, WeightEstimate } from "./weight-estimate.ts";
export { type SiteRecord, writeSiteProfile } from "./write-site-profile.ts";
