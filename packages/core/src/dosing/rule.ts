import type { Dose, DoseUnit } from "../units/index.ts";
import type { Citation } from "./citation.ts";
import type { Basis } from "./weights.ts";

/** Doses that are accepted for this use, in the unit of the rule, per kg of the basis of the rule. */
export interface AcceptedRange {
  readonly lowPerKg: number;
  readonly highPerKg: number;
  readonly citations: readonly Citation[];
}

/** What bounds a single dose, whatever the weight says. */
export interface DoseLimits {
  readonly maximum?: Dose;
  readonly minimum?: Dose;
}

/** What an amount is of. */
interface OfSubstance {
  /** Set where the amount is of something else than the medicine as its label counts it: "calcium" of calcium gluconate. */
  readonly expressedAs?: string;
}

/** amountPerKg x weight of the basis. */
export interface PerKgRule extends DoseLimits, OfSubstance {
  readonly kind: "per-kg";
  readonly amountPerKg: number;
  readonly unit: DoseUnit;
  readonly basis: Basis;
  /**
   * For adjusted weight with a share of the medicine's own in place of the usual 0.4: ideal + share x (total - ideal).
   * Above 1 the rule asks for more than total weight.
   */
  readonly shareOfExcess?: number;
  /** The amount is for each percent of body surface burnt, as is its accepted range. */
  readonly perBurnPercent?: BurnCount;
  readonly accepted?: AcceptedRange;
}

/** A smaller burn than this is not what the rule was written for. */
export interface BurnCount {
  readonly fromPercent: number;
}

/** amountPerM2 x body surface by Mosteller, on total weight. */
export interface PerM2Rule extends DoseLimits, OfSubstance {
  readonly kind: "per-m2";
  readonly amountPerM2: number;
  readonly unit: DoseUnit;
}

/** The same amount for everyone it applies to. */
export interface FixedRule extends OfSubstance {
  readonly kind: "fixed";
  readonly amount: number;
  readonly unit: DoseUnit;
  /** Per kg of total weight. */
  readonly accepted?: AcceptedRange;
}

export type SimpleRule = PerKgRule | PerM2Rule | FixedRule;

/** Bands of age; a band holds [lowMonths, highMonths), the last one may be open. */
export interface AgeBandRule {
  readonly kind: "age-bands";
  readonly bands: readonly AgeBand[];
  /** What to compute where the age is not known; absent: the choices by age are shown instead. */
  readonly whenAgeUnknown?: SimpleRule;
}

export interface AgeBand {
  readonly lowMonths: number;
  readonly highMonths?: number;
  readonly rule: SimpleRule;
}

/** Bands of weight; a band holds [lowKg, highKg), the last one may be open. */
export interface WeightBandRule {
  readonly kind: "weight-bands";
  readonly basis: Basis;
  readonly bands: readonly WeightBand[];
}

export interface WeightBand {
  readonly lowKg: number;
  readonly highKg?: number;
  readonly rule: SimpleRule;
}

/**
 * A dose per kg and time, run continuously: where it starts, between what it moves and in what steps.
 *
 * In mL it is a fluid that runs as it is, without a preparation.
 */
export interface InfusionRule extends OfSubstance {
  readonly kind: "infusion";
  readonly unit: DoseUnit;
  readonly per: "min" | "h";
  readonly basis: Basis;
  readonly startPerKg: number;
  readonly lowPerKg: number;
  readonly highPerKg: number;
  readonly stepPerKg?: number;
  /** The most in one `per`, whatever the weight says. */
  readonly maximum?: Dose;
}

/** An infusion by bands of age [lowMonths, highMonths), all in one unit and time, the last one may be open. */
export interface InfusionAgeBandRule {
  readonly kind: "infusion-age-bands";
  readonly bands: readonly InfusionAgeBand[];
  /** What to run where the age is not known; absent: the starts by age are shown instead. */
  readonly whenAgeUnknown?: InfusionRule;
}

export interface InfusionAgeBand {
  readonly lowMonths: number;
  readonly highMonths?: number;
  readonly rule: InfusionRule;
}

/** A fluid that runs by tiers of weight: so much for each of the first kg, so much for each of the next. */
export interface TieredRateRule {
  readonly kind: "tiered-rate";
  readonly unit: "mL";
  readonly per: "h";
  readonly basis: Basis;
  /** Rising; the last one is open. */
  readonly tiers: readonly WeightTier[];
  /** The most in one hour, whatever the weight says. */
  readonly maximum?: Dose;
}

/** perKg for each kg up to `upToKg` that no lower tier has counted. */
export interface WeightTier {
  readonly upToKg?: number;
  readonly perKg: number;
}

export type Rule = SimpleRule | AgeBandRule | WeightBandRule | RunningRule;

/** What runs, in place of being given at once. */
export type RunningRule = InfusionRule | InfusionAgeBandRule | TieredRateRule;

/**
 * Whether a rule is of something that runs: an infusion, or a fluid by tiers.
 *
 * ```ts
 * import { isRunning } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * assert.ok(!isRunning({ kind: "fixed", amount: 1, unit: "mg" }));
 * ```
 */
export function isRunning(rule: Rule): rule is RunningRule {
  return rule.kind === "infusion" || rule.kind === "infusion-age-bands" || rule.kind === "tiered-rate";
}
