import type { Basis } from "./weights.ts";

/** Units a dose may be given in. `microgram` and `unit` are written in full wherever people read them. */
export type DoseUnit = "g" | "mg" | "microgram" | "nanogram" | "mmol" | "unit" | "mL" | "J";

export interface Dose {
  readonly amount: number;
  readonly unit: DoseUnit;
}

/** A citation as it travels with a line. `read`: seen in the document; `memory`: to be verified against it. */
export interface SourceRef {
  readonly sourceId: string;
  readonly title: string;
  readonly locator?: string;
  readonly verification: "read" | "memory" | "common practice";
}

/** One step of the arithmetic, as data; `core/wording` renders it. The engine's own file refines this union. */
export interface SheetLine {
  /** `medicine.use`, stable across versions of the formulary: `adrenaline.arrest`. */
  readonly id: string;
  readonly medicine: string;
  readonly use: string;
  /** The problem it is listed under on screen and paper. */
  readonly problem: string;
  readonly route: string;
  readonly basis: Basis;
  /** The weight of that basis that was used, kg. */
  readonly basisKg: number;
  /** The dose as drawn up, after limits and rounding. */
  readonly dose: Dose;
  readonly volume?: { readonly ml: number; readonly strength: string };
  readonly rate?: { readonly mlPerH: number; readonly concentration: string };
  readonly limitedBy?: "single-maximum" | "minimum";
  readonly robustness?: Robustness;
  readonly working: readonly unknown[];
  readonly warnings: readonly unknown[];
  readonly sources: readonly SourceRef[];
}

/** How likely the dose as drawn up lies outside the accepted range per kg of the child's true weight. */
export interface Robustness {
  /** Probability over the weight distribution, 0 to 1. */
  readonly probabilityOutside: number;
  readonly acceptedLowPerKg: number;
  readonly acceptedHighPerKg: number;
}
