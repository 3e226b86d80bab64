export type { Dose, DoseUnit } from "../units/index.ts";
export type { Citation, Source, SourceRef, Verification } from "./citation.ts";
export { computeSheet, type SheetInput } from "./compute-sheet.ts";
export type { AgeChoice, DosingWarning, Unavailable } from "./dosing-warning.ts";
export type {
  Administration,
  ApplicabilityLimit,
  CumulativeMaximum,
  DoseOption,
  Formulary,
  Medicine,
  Note,
  ProblemId,
  Repeat,
  Route,
  Use,
} from "./formulary.ts";
export { type InfusionArithmetic, infusionDose, infusionRateMlPerH } from "./infusion-rate.ts";
export type {
  AcceptedRange,
  AgeBand,
  AgeBandRule,
  DoseLimits,
  FixedRule,
  InfusionRule,
  PerKgRule,
  PerM2Rule,
  Rule,
  SimpleRule,
  WeightBand,
  WeightBandRule,
} from "./rule.ts";
export type {
  DoseLine,
  DrawnVolume,
  FurtherDose,
  Guidance,
  OptionRef,
  PreparedInfusion,
  Robustness,
  RobustnessOmitted,
  SheetLine,
  UnavailableLine,
} from "./sheet-line.ts";
export type {
  FixedPreparation,
  PerKgPreparation,
  Preparation,
  SmallVolumeDilution,
  Strength,
} from "./strength.ts";
export { type Syringe, usualSyringes } from "./syringes.ts";
export type { Basis, Weights } from "./weights.ts";
export type { Concentration, PerTime, WorkingStep } from "./working-step.ts";
