/** The first 28 days of life, in months of 365.25 / 12 days. @source who-newborn-period */
export const NEWBORN_MONTHS: number = (28 * 12) / 365.25;
