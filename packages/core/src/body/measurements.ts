import type { Centimetres, Kilograms, Millimetres, Months } from "../units/index.ts";

export type Sex = "m" | "f";

/** How the length was taken. */
export type Posture = "lying" | "half-sitting" | "seated";

/** Build judged by eye, when no girth can be measured. */
export type Build = "very-thin" | "thin" | "average" | "heavy" | "very-heavy";

/**
 * What is known of one child. Any subset is welcome; nothing that is unknown has a default.
 *
 * The keys are the vocabulary for "what the estimate rests on" as well.
 */
export interface Measurements {
  /** Lying length, crown to heel, cm. Standing height + 0.7 cm where only that is known. */
  readonly lengthCm?: Centimetres;
  readonly posture?: Posture;
  /** Mid-upper-arm circumference, mm. */
  readonly armMm?: Millimetres;
  readonly waistCm?: Centimetres;
  readonly thighCm?: Centimetres;
  readonly calfCm?: Centimetres;
  /** Head circumference, cm, under 1 year. */
  readonly headCm?: Centimetres;
  readonly sex?: Sex;
  readonly ageMonths?: Months;
  readonly build?: Build;
  /** Weight stated by the carer, kg. */
  readonly carerKg?: Kilograms;
  /** Weight read from a scale now, kg. Where it is known the total weight is not estimated. */
  readonly scaleKg?: Kilograms;
}

export type MeasurementName = keyof Measurements;
