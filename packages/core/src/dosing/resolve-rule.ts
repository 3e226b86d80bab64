import { err, ok, type Result } from "../result.ts";
import { toNumber } from "../units/rational.ts";
import { type ChildFacts, isWithin } from "./child-facts.ts";
import { chooseBasis } from "./choose-basis.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { AgeBandRule, InfusionAgeBandRule, InfusionRule, SimpleRule, WeightBandRule } from "./rule.ts";
import type { WorkingStep } from "./working-step.ts";

export interface ResolvedRule<R = SimpleRule> {
  readonly rule: R;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

interface AgeBandOf<R> {
  readonly lowMonths: number;
  readonly highMonths?: number;
  readonly rule: R;
}

/** The rule that applies to this child: bands are looked up, anything else stays as it is. */
export function resolveRule(
  rule: SimpleRule | AgeBandRule | WeightBandRule,
  child: ChildFacts,
): Result<ResolvedRule, Unavailable> {
  if (rule.kind === "age-bands") return resolveAge(rule, child);
  if (rule.kind === "weight-bands") return resolveWeight(rule, child);
  return ok({ rule, steps: [], warnings: [] });
}

/** The infusion of this child's age. */
export function resolveInfusion(
  rule: InfusionAgeBandRule,
  child: ChildFacts,
): Result<ResolvedRule<InfusionRule>, Unavailable> {
  return resolveAge(rule, child);
}

function resolveAge<R>(
  rule: { readonly bands: readonly AgeBandOf<R>[]; readonly whenAgeUnknown?: R },
  { ageMonths }: ChildFacts,
): Result<ResolvedRule<R>, Unavailable> {
  if (ageMonths === undefined) {
    return rule.whenAgeUnknown
      ? ok({ rule: rule.whenAgeUnknown, steps: [], warnings: [{ type: "age-needed", for: "band" }] })
      : err({ type: "age-missing", choices: [] });
  }
  const band = rule.bands.find(
    ({ lowMonths, highMonths }) =>
      ageMonths >= lowMonths && (highMonths === undefined || ageMonths < highMonths),
  );
  if (band === undefined) {
    const edges = rule.bands.map(({ lowMonths: low, highMonths: high }) => ({ low, high }));
    return err({ type: "outside-bands", by: "age", value: ageMonths, ...wholeRange(edges) });
  }
  return ok({
    rule: band.rule,
    steps: [bandStep("age", ageMonths, band.lowMonths, band.highMonths)],
    warnings: [],
  });
}

function resolveWeight(rule: WeightBandRule, child: ChildFacts): Result<ResolvedRule, Unavailable> {
  const chosen = chooseBasis(rule.basis, child);
  if (!chosen.ok) return chosen;
  const { kg, steps, warnings } = chosen.value;
  const band = rule.bands.find(({ lowKg, highKg }) => isWithin(kg, lowKg, highKg));
  if (band === undefined) {
    const edges = rule.bands.map(({ lowKg: low, highKg: high }) => ({ low, high }));
    return err({ type: "outside-bands", by: "weight", value: toNumber(kg), ...wholeRange(edges) });
  }
  const step = bandStep("weight", toNumber(kg), band.lowKg, band.highKg);
  return ok({ rule: band.rule, steps: [...steps, step], warnings });
}

function bandStep(by: "age" | "weight", value: number, low: number, high: number | undefined): WorkingStep {
  return { step: "band", by, value, low, ...(high !== undefined && { high }) };
}

/** From the lowest edge to the highest; open at the top where any band is. */
function wholeRange(edges: readonly { low: number; high: number | undefined }[]): {
  low: number;
  high?: number;
} {
  const low = Math.min(...edges.map((edge) => edge.low));
  const highs = edges.map((edge) => edge.high ?? Number.POSITIVE_INFINITY);
  const high = Math.max(...highs);
  return { low, ...(Number.isFinite(high) && { high }) };
}
