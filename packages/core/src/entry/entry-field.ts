import type { Build, Posture, Sex } from "../body/index.ts";
import type { Centimetres, Kilograms, Millimetres, Months } from "../units/index.ts";

/** What a person can type about one child, and the type it becomes. The keys are the names of the fields. */
export interface EntryValues {
  readonly lengthCm: Centimetres;
  /** Standing height; becomes a lying length by the rule of + 0.7 cm. */
  readonly standingHeightCm: Centimetres;
  readonly armMm: Millimetres;
  readonly waistCm: Centimetres;
  readonly thighCm: Centimetres;
  readonly calfCm: Centimetres;
  readonly headCm: Centimetres;
  readonly ageMonths: Months;
  readonly carerKg: Kilograms;
  readonly scaleKg: Kilograms;
  readonly sex: Sex;
  readonly posture: Posture;
  readonly build: Build;
}

export type EntryField = keyof EntryValues;

export type ChoiceField = "sex" | "posture" | "build";
export type QuantityField = Exclude<EntryField, ChoiceField>;
