export { childrenForCalibration } from "./children-for-calibration.ts";
export { childrenForLimits, limitHalfWidth } from "./children-for-limits.ts";
export { childrenForNonInferiority } from "./children-for-non-inferiority.ts";
export {
  childrenForShare,
  childrenForShareWithin,
  powerForShare,
  type ShareTarget,
} from "./children-for-share.ts";
export {
  type PowerByModel,
  type PowerByModelInput,
  type PowerIssue,
  powerByModel,
} from "./power-by-model.ts";
