/** Units a dose may be given in. `microgram`, `unit` and `puff` are written in full wherever people read them. */
export type DoseUnit = "g" | "mg" | "microgram" | "nanogram" | "mmol" | "unit" | "mL" | "puff" | "J";

/** What a dose counts per; absent for a dose given at once. */
export type DosePer = "kg" | "m2" | "mL" | "puff" | "min" | "h" | "kg/min" | "kg/h";

/** An amount with its unit. */
export interface Dose {
  readonly amount: number;
  readonly unit: DoseUnit;
  readonly per?: DosePer;
}
