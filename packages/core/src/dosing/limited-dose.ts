import { ok, type Result } from "../result.ts";
import { conversionFactor } from "../units/convert-dose.ts";
import type { Dose, DoseUnit } from "../units/index.ts";
import { compare, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import { type ChosenBasis, chooseBasis } from "./choose-basis.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { BurnCount, PerKgRule, SimpleRule } from "./rule.ts";
import type { Basis } from "./weights.ts";
import type { WorkingStep } from "./working-step.ts";
import type { Writable } from "./writable.ts";

/** The dose a rule asks for, after its limits and before anything is drawn up. */
export interface LimitedDose {
  readonly basis: Basis;
  readonly kg: Rational;
  readonly amount: Rational;
  readonly unit: DoseUnit;
  /** What it is of, where that is not the medicine itself. */
  readonly of?: string;
  readonly maximum?: Rational;
  readonly minimum?: Rational;
  readonly limitedBy?: "single-maximum" | "minimum";
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** The amount of a dose in another unit, exactly. */
function amountIn(dose: Dose, unit: DoseUnit): Rational {
  return multiply(exactly(dose.amount), conversionFactor({ from: dose.unit, to: unit }));
}

export function limitedDose(rule: SimpleRule, child: ChildFacts): Result<LimitedDose, Unavailable> {
  const full = fullDose(rule, child);
  if (!full.ok) return full;
  const dose: Writable<LimitedDose> = full.value;
  if (rule.expressedAs !== undefined) dose.of = rule.expressedAs;
  if (rule.kind === "fixed") return ok(dose);
  const { amount, unit } = dose;
  const maximum = rule.maximum && amountIn(rule.maximum, unit);
  const minimum = rule.minimum && amountIn(rule.minimum, unit);
  if (maximum) dose.maximum = maximum;
  if (minimum) dose.minimum = minimum;
  const [limitedBy, limited] =
    maximum && compare(amount, maximum) > 0
      ? (["single-maximum", maximum] as const)
      : minimum && compare(amount, minimum) < 0
        ? (["minimum", minimum] as const)
        : [];
  if (limitedBy === undefined) return ok(dose);
  const from: Dose = { amount: toNumber(amount), unit };
  const to: Dose = { amount: toNumber(limited), unit };
  dose.amount = limited;
  dose.limitedBy = limitedBy;
  dose.steps = [...dose.steps, { step: "limit", limit: limitedBy, from, result: to }];
  dose.warnings = [...dose.warnings, { type: "limited", by: limitedBy, from, to }];
  return ok(dose);
}

/** What the rule asks for, before its limits; made anew for each call. */
function fullDose(rule: SimpleRule, child: ChildFacts): Result<LimitedDose, Unavailable> {
  const { unit } = rule;
  if (rule.kind === "fixed") {
    const amount = exactly(rule.amount);
    const steps: WorkingStep[] = [{ step: "fixed", result: { amount: rule.amount, unit } }];
    return ok({ basis: "total", kg: child.kgByBasis.total, amount, unit, steps, warnings: [] });
  }
  if (rule.kind === "per-m2") return surfaceDose(rule.amountPerM2, unit, child);
  const chosen = chooseBasis(rule.basis, child, rule);
  if (!chosen.ok) return chosen;
  if (rule.perBurnPercent !== undefined) return burnDose(rule, rule.perBurnPercent, chosen.value, child);
  const { basis, kg, steps, warnings } = chosen.value;
  const amount = multiply(exactly(rule.amountPerKg), kg);
  const perKg: Dose = { amount: rule.amountPerKg, unit, per: "kg" };
  const result: Dose = { amount: toNumber(amount), unit };
  const perKgStep: WorkingStep = { step: "per-kg", perKg, basis, kg: toNumber(kg), result };
  return ok({ basis, kg, amount, unit, steps: [...steps, perKgStep], warnings });
}

/** Amount per kg and percent burnt x kg x percent. */
function burnDose(
  { amountPerKg, unit }: PerKgRule,
  { fromPercent }: BurnCount,
  { basis, kg, steps, warnings }: ChosenBasis,
  { burnPercent: percent }: ChildFacts,
): Result<LimitedDose, Unavailable> {
  const perPercent = multiply(exactly(amountPerKg), kg);
  if (percent === undefined) {
    const dose: Dose = { amount: toNumber(perPercent), unit };
    return { ok: false, error: { type: "burn-percent-missing", perPercent: dose } };
  }
  const amount = multiply(perPercent, percent);
  const burnPercent = toNumber(percent);
  const step: WorkingStep = {
    step: "per-kg-burnt",
    perKg: { amount: amountPerKg, unit, per: "kg" },
    basis,
    kg: toNumber(kg),
    burnPercent,
    result: { amount: toNumber(amount), unit },
  };
  const small: DosingWarning[] =
    burnPercent < fromPercent ? [{ type: "small-burn", burnPercent, fromPercent }] : [];
  return ok({ basis, kg, amount, unit, steps: [...steps, step], warnings: [...warnings, ...small] });
}

/** Body surface by Mosteller, sqrt(cm x kg / 3600), written to 0.01 m2. @source who-pocket-book-2013, Annex 2 */
function surfaceDose(
  amountPerM2: number,
  unit: DoseUnit,
  child: ChildFacts,
): Result<LimitedDose, Unavailable> {
  const { lengthCm } = child;
  if (lengthCm === undefined) return { ok: false, error: { type: "length-missing" } };
  const kg = child.kgByBasis.total;
  const surface = fraction(Math.round(100 * Math.sqrt((lengthCm * toNumber(kg)) / 3600)), 100);
  const amount = multiply(exactly(amountPerM2), surface);
  const step: WorkingStep = {
    step: "per-m2",
    perM2: { amount: amountPerM2, unit, per: "m2" },
    lengthCm,
    kg: toNumber(kg),
    surfaceM2: toNumber(surface),
    result: { amount: toNumber(amount), unit },
  };
  return ok({ basis: "total", kg, amount, unit, steps: [step], warnings: [] });
}
