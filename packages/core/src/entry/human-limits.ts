import type { QuantityField } from "./entry-field.ts";

/** Closed range, in the unit of the field. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/**
 * The widest range in which a typed number can belong to a child at all. Outside it there is a slip of unit or
 * of the finger. These are not the limits of the body model, which knows how far its own data reach.
 *
 * Rule: half the smallest and one and a half times the largest value in the open surveys (93,000 children
 * under 20 years; `human-limits.test.ts` recomputes them), rounded outwards. Exceptions have their reason beside them.
 *
 * @source nhanes smallest and largest values
 * @source nutrition-surveys smallest and largest values
 */
export const HUMAN_LIMITS: Readonly<Record<QuantityField, Limits>> = {
  // 37.4 cm (infants of low birth weight) to 204.4 cm.
  lengthCm: { low: 18, high: 310 },
  standingHeightCm: { low: 18, high: 310 },
  // No open survey has these. The same rule on what the equations (@source gauld2004, @source stevenson1995) make of a child of
  // 80 cm at 5 years and of 205 cm at 19 (ulna 9.7 to 33 cm), and of 45 and 205 cm (knee 7.5 to 67 cm, tibia 4.2 to 53 cm).
  ulnaCm: { low: 4, high: 50 },
  kneeHeightCm: { low: 3, high: 101 },
  tibiaCm: { low: 2, high: 80 },
  // 63 to 565 mm.
  armMm: { low: 30, high: 850 },
  // 32.0 cm (at 2 years) to 167.2 cm.
  waistCm: { low: 16, high: 255 },
  // 25.1 to 92.0 cm and 17.5 to 61.1 cm, but from 8 years on: a quarter of the smallest leaves room for infants.
  thighCm: { low: 6, high: 140 },
  calfCm: { low: 4, high: 95 },
  // 32.3 cm (15.5 cm in one row, a misreading) to 50.2 cm, under 1 year; three quarters more than that for older heads.
  headCm: { low: 15, high: 88 },
  // The data end before the twentieth birthday, and so does what this tool is for.
  ageMonths: { low: 0, high: 240 },
  earlierAgeMonths: { low: 0, high: 240 },
  // Survivors weigh from 0.26 kg at birth (@source bell2011); the heaviest in the surveys 215 kg.
  carerKg: { low: 0.2, high: 325 },
  earlierKg: { low: 0.2, high: 325 },
  scaleKg: { low: 0.2, high: 325 },
};

/**
 * The smallest arm, in mm, per cm of length. The thinnest of the 58,000 children of the open surveys have 1.01;
 * below 0.9 the two numbers have changed places, or one of them is wrong.
 *
 * @source nhanes smallest arm / length
 * @source nutrition-surveys smallest arm / length, four unit slips and misreadings aside
 */
export const SMALLEST_ARM_MM_PER_LENGTH_CM = 0.9;

/**
 * How far a lying length may differ from standing height + 0.7 cm before it is worth saying, cm: twice the
 * standard deviation (1.0 cm) of the difference in children measured both ways.
 *
 * @source nhanes children of 24 to 47 months, lying and standing
 */
export const LENGTHS_AGREE_WITHIN_CM = 2;
