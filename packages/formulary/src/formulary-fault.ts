/** Something wrong with a formulary, in words for the pharmacist who keeps it. */
export interface FormularyFault {
  /** Where: "adrenaline, use arrest, option by-weight". */
  readonly place: string;
  /** What: "maximum 1 microgram is below the dose for a child of 15 kg". */
  readonly message: string;
}
