export type { Dose, DoseUnit } from "../units/index.ts";
export type { Citation, Source, SourceRef, Verification } from "./citation.ts";
export { computeSheet, type SheetInput } from "./compute-sheet.ts";
export type { AgeChoice, DosingWarning, Settlement, Unavailable } from "./dosing-warning.ts";
export { burnFluidMl, fluidDeficitMl } from "./fluid-losses.ts";
export type {
  Administration,
  ApplicabilityLimit,
  CumulativeMaximum,
  DoseOption,
  Formulary,
  Medicine,
  Note,
  OverlayRecord,
  Portion,
  ProblemId,
  Repeat,
  Reviewer,
  Route,
  SignOff,
  Use,
  VolumeRounding,
} from "./formulary.ts";
export { type InfusionArithmetic, infusionDose, infusionRateMlPerH } from "./infusion-rate.ts";
export { medicineIdOf } from "./line-id.ts";
export { maintenanceFluidMl } from "./maintenance-fluid.ts";
export {
  type AcceptedRange,
  type AgeBand,
  type AgeBandRule,
  type BurnCount,
  type DoseLimits,
  type FixedRule,
  type InfusionAgeBand,
  type InfusionAgeBandRule,
  type InfusionRule,
  isRunning,
  type PerKgRule,
  type PerM2Rule,
  type Rule,
  type RunningRule,
  type SimpleRule,
  type TieredRateRule,
  type WeightBand,
  type WeightBandRule,
  type WeightTier,
} from "./rule.ts";
export type { SettlingMeasurement } from "./settling-measurement.ts";
export type {
  CountedPuffs,
  DoseEquivalent,
  DoseLine,
  DrawnVolume,
  FirstHour,
  FluidPortion,
  FurtherDose,
  GivingLimits,
  Guidance,
  OptionRef,
  PreparedInfusion,
  Robustness,
  RobustnessOmitted,
  SheetLine,
  UnavailableLine,
} from "./sheet-line.ts";
export {
  type FixedPreparation,
  type InhalerStrength,
  isInhaler,
  type LiquidStrength,
  type PerKgPreparation,
  type Preparation,
  type SmallVolumeDilution,
  type Strength,
  type StrengthEquivalent,
} from "./strength.ts";
export { type Syringe, usualSyringes } from "./syringes.ts";
export { trackGivenDoses } from "./track-given-doses.ts";
export type { GivenRecord, TrackedDoses, TrackedLine, TrackingWarning } from "./tracked-doses.ts";
export type { Basis, Weights } from "./weights.ts";
export type { Concentration, PerTime, WorkingStep } from "./working-step.ts";
