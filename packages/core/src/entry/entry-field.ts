import type { Build, MissingLimb, Posture, Sex } from "../body/index.ts";
import type { Centimetres, Kilograms, Millimetres, Months } from "../units/index.ts";

/** What a person can type about one child, and the type it becomes. The keys are the names of the fields. */
export interface EntryValues {
  readonly lengthCm: Centimetres;
  /** Standing height; becomes a lying length by the rule of + 0.7 cm. */
  readonly standingHeightCm: Centimetres;
  readonly ulnaCm: Centimetres;
  readonly kneeHeightCm: Centimetres;
  readonly tibiaCm: Centimetres;
  readonly armMm: Millimetres;
  readonly waistCm: Centimetres;
  readonly thighCm: Centimetres;
  readonly calfCm: Centimetres;
  readonly headCm: Centimetres;
  readonly ageMonths: Months;
  readonly carerKg: Kilograms;
  /** A scale weight of earlier and the age then; only the two together say anything. */
  readonly earlierKg: Kilograms;
  readonly earlierAgeMonths: Months;
  readonly scaleKg: Kilograms;
  readonly sex: Sex;
  readonly posture: Posture;
  readonly people: 1 | 2;
  readonly lengthReadings: number;
  readonly armReadings: number;
  readonly armStepMm: Millimetres;
  readonly build: Build;
  readonly missingLimb: MissingLimb;
  readonly oedema: boolean;
  readonly pregnant: boolean;
}

export type EntryField = keyof EntryValues;

/** Fields that are answered by one of a few words. */
export type ChoiceField =
  | "sex"
  | "posture"
  | "people"
  | "lengthReadings"
  | "armReadings"
  | "armStepMm"
  | "build"
  | "missingLimb"
  | "oedema"
  | "pregnant";
export type QuantityField = Exclude<EntryField, ChoiceField>;
