/** One child as the fit sees it: lying length, and whatever else was measured. */
export interface FitChild {
  /** Where the row comes from: `NHANES`, a survey, or a published reference. */
  readonly source: string;
  /** The child within its source: rows of one child stay together when the data are split. */
  readonly childId: number;
  readonly sex: "m" | "f";
  readonly lengthCm: number;
  readonly weightKg: number;
  readonly armMm?: number;
  /** Exact months, or the middle of the month where completed months were published. */
  readonly ageMonths?: number;
  readonly waistCm?: number;
  readonly thighCm?: number;
  readonly calfCm?: number;
  readonly headCm?: number;
  /** How much the row counts in the fit; 1 when absent. */
  readonly weight?: number;
}
