import type { NumberName } from "./case-event.ts";

/** Measurements that are one number, and their columns: the names that `steelyard weigh` and `steelyard study` read. */
export const numberColumns: Readonly<Partial<Record<NumberName, string>>> = {
  lengthCm: "lying_length_cm",
  armMm: "arm_mm",
  waistCm: "waist_cm",
  thighCm: "thigh_cm",
  calfCm: "calf_cm",
  headCm: "head_cm",
  ulnaCm: "ulna_cm",
  kneeHeightCm: "knee_height_cm",
  tibiaCm: "tibia_cm",
  ageMonths: "age_months",
  carerKg: "carer_kg",
  people: "people",
  lengthReadings: "length_readings",
  armReadings: "arm_readings",
  armStepMm: "arm_step_mm",
};

/** Measurements that are a word. */
export const wordColumns: Readonly<Record<"sex" | "posture" | "build" | "missingLimb", string>> = {
  sex: "sex",
  posture: "posture",
  build: "build",
  missingLimb: "missing_limb",
};

/** Measurements that are yes or no. */
export const flagColumns: Readonly<Record<"oedema" | "pregnant", string>> = {
  oedema: "oedema",
  pregnant: "pregnant",
};

export const estimateColumns: Readonly<Record<"totalKg" | "low95Kg" | "high95Kg" | "idealKg", string>> = {
  totalKg: "total_kg",
  low95Kg: "low95_kg",
  high95Kg: "high95_kg",
  idealKg: "ideal_kg",
};

export const secondColumns: Readonly<Record<"lengthCm" | "armMm", string>> = {
  lengthCm: "second_length_cm",
  armMm: "second_arm_mm",
};

export const columns: Readonly<
  Record<
    | "code"
    | "weightKg"
    | "weightDaysAfter"
    | "scaleAtOnceKg"
    | "rests"
    | "software"
    | "model"
    | "formulary"
    | "formularySigned"
    | "calibration",
    string
  >
> = {
  code: "child_id",
  weightKg: "weight_kg",
  weightDaysAfter: "weight_days_after",
  scaleAtOnceKg: "scale_at_once_kg",
  rests: "rests_on",
  software: "software",
  model: "model",
  formulary: "formulary",
  formularySigned: "formulary_signed",
  calibration: "calibration",
};

/**
 * The columns of a study file of cases, in their order: one row per case, no name, no date, the day of the scale weight
 * as days after the case.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { studyColumns } from "@steelyard/records/case";
 *
 * assert.equal(studyColumns.includes("arm_mm"), true);
 * assert.equal(studyColumns.some((column) => /name|date/.test(column)), false);
 * ```
 */
export const studyColumns: readonly string[] = [
  columns.code,
  ...Object.values(numberColumns),
  ...Object.values(wordColumns),
  ...Object.values(flagColumns),
  columns.scaleAtOnceKg,
  ...Object.values(estimateColumns),
  columns.rests,
  ...Object.values(secondColumns),
  columns.weightKg,
  columns.weightDaysAfter,
  columns.software,
  columns.model,
  columns.formulary,
  columns.formularySigned,
  columns.calibration,
];
