import { conversionFactor, isConvertible } from "../units/convert-dose.ts";
import type { Dose, DoseUnit } from "../units/index.ts";
import { compare, exactly, multiply, type Rational } from "../units/rational.ts";
import { withoutDrift } from "../units/without-drift.ts";
import { type ChildFacts, isWithin } from "./child-facts.ts";
import { chooseBasis } from "./choose-basis.ts";
import type { PreparedUse } from "./prepare-uses.ts";
import { isRunning, type Rule, type SimpleRule } from "./rule.ts";
import type { Basis } from "./weights.ts";

const NOTHING: Rational = { numerator: 0, denominator: 1 };

/** The smaller of the maximum per kg and the flat one, in the unit of the use; absent where there is neither. */
export function cumulativeMaximum(
  prepared: PreparedUse,
  unit: DoseUnit,
  child: ChildFacts,
): Rational | "not-known" | undefined {
  const cumulative = prepared.use.repeat?.cumulativeMaximum;
  const band = cumulative?.byWeight?.find(({ lowKg, highKg }) =>
    isWithin(child.kgByBasis.total, lowKg, highKg),
  );
  const { perKg, total } = band ?? cumulative ?? {};
  const flat = total && amountIn(total, unit);
  if (perKg === undefined) return flat;
  const chosen = chooseBasis(basisOf(defaultRule(prepared)), child);
  if (!chosen.ok) return "not-known";
  const byWeight = multiply(amountIn(perKg, unit), chosen.value.kg);
  return flat === undefined || compare(byWeight, flat) < 0 ? byWeight : flat;
}

/** The largest single maximum that any option, band or later dose of the use has; absent where one has none. */
export function singleMaximum({ use }: PreparedUse, unit: DoseUnit): Rational | undefined {
  const rules = use.options.flatMap(({ rule, further = [] }) => [...simpleRules(rule), ...further]);
  const maxima = rules.map((rule) =>
    rule.kind === "fixed" ? { amount: rule.amount, unit: rule.unit } : rule.maximum,
  );
  if (maxima.length === 0) return undefined;
  let largest = NOTHING;
  for (const maximum of maxima) {
    if (maximum === undefined || !isConvertible(maximum.unit, unit)) return undefined;
    const amount = amountIn(maximum, unit);
    if (compare(amount, largest) > 0) largest = amount;
  }
  return largest;
}

function simpleRules(rule: Rule): readonly SimpleRule[] {
  if (isRunning(rule)) return [];
  if (rule.kind === "age-bands" || rule.kind === "weight-bands") return rule.bands.map((band) => band.rule);
  return [rule];
}

function defaultRule({ use, options }: PreparedUse): Rule {
  const option = options.get(use.defaultOption)?.option;
  if (option === undefined)
    throw new RangeError(`Cannot track a use as its option must exist: ${use.defaultOption}`);
  return option.rule;
}

export function unitOf(prepared: PreparedUse): DoseUnit {
  const rule = defaultRule(prepared);
  if (!("bands" in rule)) return rule.unit;
  const [band] = rule.bands;
  if (band === undefined) throw new RangeError("Cannot track a use as its bands must not be empty");
  return band.rule.unit;
}

function basisOf(rule: Rule): Basis {
  if (rule.kind === "age-bands" || rule.kind === "infusion-age-bands")
    return basisOf(rule.bands[0]?.rule ?? { kind: "fixed", amount: 1, unit: "mg" });
  return "basis" in rule ? rule.basis : "total";
}

export function amountIn(dose: Dose, unit: DoseUnit): Rational {
  return multiply(exactly(withoutDrift(dose.amount)), factor(dose.unit, unit));
}

export function factor(from: DoseUnit, to: DoseUnit): Rational {
  return conversionFactor({ from, to });
}
