import type { Centimetres, Kilograms, Millimetres, Months } from "../units/index.ts";

export type Sex = "m" | "f";

/** How the length was taken. */
export type Posture = "lying" | "half-sitting" | "seated";

/** Build judged by eye, when no girth can be measured. */
export type Build = "very-thin" | "thin" | "average" | "heavy" | "very-heavy";

/** A limb, or the part of one, that is missing. */
export type MissingLimb = "hand" | "forearm" | "arm" | "foot" | "lower-leg" | "leg";

/** A weight read from a scale some time ago, and the age the child had then. */
export interface EarlierWeight {
  readonly kg: Kilograms;
  readonly ageMonths: Months;
}

/**
 * What is known of one child. Any subset is welcome; nothing that is unknown has a default.
 *
 * The keys are the vocabulary for "what the estimate rests on" as well.
 */
export interface Measurements {
  /** Lying length, crown to heel, cm. Standing height + 0.7 cm where only that is known. */
  readonly lengthCm?: Centimetres;
  readonly posture?: Posture;
  /** How many held the tape and the child: one reads less exactly than two. */
  readonly people?: 1 | 2;
  /** How many readings of the length were averaged. */
  readonly lengthReadings?: number;
  /** Where the length cannot be taken (contractures): ulna, knee height or tibia, cm. */
  readonly ulnaCm?: Centimetres;
  readonly kneeHeightCm?: Centimetres;
  readonly tibiaCm?: Centimetres;
  /** Mid-upper-arm circumference, mm. */
  readonly armMm?: Millimetres;
  /** The step the arm was read to, mm: 1, or 5 on a coarse tape. */
  readonly armStepMm?: Millimetres;
  /** How many readings of the arm were averaged. */
  readonly armReadings?: number;
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
  /** A scale weight of earlier, grown forward on the child's own centile; needs the age now. */
  readonly earlier?: EarlierWeight;
  /** Weight read from a scale now, kg. Where it is known the total weight is not estimated. */
  readonly scaleKg?: Kilograms;
  readonly missingLimb?: MissingLimb;
  readonly oedema?: boolean;
  readonly pregnant?: boolean;
}

export type MeasurementName = keyof Measurements;
