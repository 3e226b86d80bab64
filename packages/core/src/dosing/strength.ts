import type { DoseUnit } from "../units/index.ts";
import type { Citation } from "./citation.ts";

/** What one container holds: a liquid that is drawn up, or the puffs of an inhaler. */
export type Strength = LiquidStrength | InhalerStrength;

/** Mass in each puff of a metered-dose inhaler, as its label counts it. A puff cannot be divided. */
export interface InhalerStrength {
  readonly id: string;
  readonly amountPerPuff: number;
  readonly unit: DoseUnit;
  /** "pressurised inhaler, with a spacer". */
  readonly container: string;
  /** Puffs in a full one. */
  readonly containerPuffs: number;
  readonly citations: readonly Citation[];
}

/**
 * Whether a strength is that of a metered-dose inhaler, counted per puff, and not of a liquid, counted per mL.
 *
 * ```ts
 * import { isInhaler } from "@steelyard/core/dosing";
 * import { draftFormulary } from "@steelyard/formulary";
 * import assert from "node:assert/strict";
 * const salbutamol = draftFormulary.medicines.find(({ id }) => id === "salbutamol");
 * const [inhaler] = salbutamol?.strengths.filter(isInhaler) ?? [];
 * assert.deepEqual([inhaler?.amountPerPuff, inhaler?.unit, inhaler?.containerPuffs], [100, "microgram", 200]);
 * ```
 */
export function isInhaler(strength: Strength): strength is InhalerStrength {
  return "amountPerPuff" in strength;
}

/** Mass (or units, mmol) per mL. Never a ratio. */
export interface LiquidStrength {
  readonly id: string;
  readonly amountPerMl: number;
  readonly unit: DoseUnit;
  /** Container as it stands on the shelf: "prefilled syringe", "ampoule", "vial, reconstituted with 10 mL". */
  readonly container: string;
  readonly containerMl: number;
  /** Set where the amount means an element and not its salt: "calcium". */
  readonly expressedAs?: string;
  /** The same contents counted as another substance, as the label states it; nothing converts what is not stated here. */
  readonly equivalents?: readonly StrengthEquivalent[];
  /** Whether and with what a volume too small to measure may be diluted; absent: never diluted. */
  readonly smallVolumeDilution?: SmallVolumeDilution;
  readonly citations: readonly Citation[];
}

/** "0.22 mmol of calcium in each mL", beside 100 mg of calcium gluconate. */
export interface StrengthEquivalent {
  readonly expressedAs: string;
  readonly amountPerMl: number;
  readonly unit: DoseUnit;
  readonly citations: readonly Citation[];
}

export interface SmallVolumeDilution {
  readonly diluent: string;
  /** Dilute below this volume, mL; the least a syringe can measure where absent. */
  readonly belowMl?: number;
  readonly citations: readonly Citation[];
}

/** How the syringe of an infusion is made up. Fixed concentrations come first, weight-based ones second. */
export type Preparation = FixedPreparation | PerKgPreparation;

/** The same concentration for every child of a band of weight [lowKg, highKg). */
export interface FixedPreparation {
  readonly kind: "fixed";
  readonly id: string;
  readonly amount: number;
  readonly unit: DoseUnit;
  readonly totalMl: number;
  readonly diluent: string;
  readonly lowKg: number;
  readonly highKg?: number;
  readonly citations: readonly Citation[];
}

/** Made up for one child: amountPerKg x weight, filled up to totalMl; for every child, or a band of weight [lowKg, highKg). */
export interface PerKgPreparation {
  readonly kind: "per-kg";
  readonly id: string;
  readonly amountPerKg: number;
  readonly unit: DoseUnit;
  readonly totalMl: number;
  readonly diluent: string;
  readonly lowKg?: number;
  readonly highKg?: number;
  readonly citations: readonly Citation[];
}
