/** One examined child, as published: nothing cleaned. Quantities that were not measured are absent. */
export interface ChildRow {
  /** Survey cycle, as `2003-2004`. */
  readonly cycle: string;
  readonly seqn: number;
  readonly sex: "m" | "f";
  /** Completed months at the exam; absent past 24 months in the cycle 2017-March 2020. */
  readonly ageMonths?: number;
  /** Completed years at screening. */
  readonly ageYears: number;
  readonly weightKg?: number;
  readonly recumbentLengthCm?: number;
  readonly standingHeightCm?: number;
  readonly armCm?: number;
  readonly waistCm?: number;
  readonly calfCm?: number;
  readonly thighCm?: number;
  readonly headCm?: number;
  /** CDC comment codes: 1 could not obtain, 2 exceeds capacity, 3 clothing (weight) or not straight (length, height), 4 medical appliance. */
  readonly weightComment?: number;
  readonly lengthComment?: number;
  readonly heightComment?: number;
}
