export type { Build, MeasurementName, Measurements, Posture, Sex } from "./measurements.ts";
export type { BodyIssue, BodyWarning, UnitSlip, WeightComponent, WeightEstimate } from "./weight-estimate.ts";
