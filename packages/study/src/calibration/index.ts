export {
  type CalibrationGain,
  type CrossValidateOptions,
  crossValidateCalibration,
} from "./cross-validate-calibration.ts";
export { fingerprintText } from "./fingerprint-text.ts";
export type { HeldOutAccuracy } from "./held-out-accuracy.ts";
export { type LearningCurveOptions, type LearningPoint, learningCurve } from "./learning-curve.ts";
export { weighedChildren } from "./weighed-children.ts";
