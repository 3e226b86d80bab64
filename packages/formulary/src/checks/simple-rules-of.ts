import type { InfusionRule, Rule, SimpleRule } from "@steelyard/core/dosing";

/** The rules a rule leads to: itself, or those of its bands. */
export function simpleRulesOf(rule: Rule): SimpleRule[] {
  switch (rule.kind) {
    case "age-bands":
      return [...rule.bands.map((band) => band.rule), ...(rule.whenAgeUnknown ? [rule.whenAgeUnknown] : [])];
    case "weight-bands":
      return rule.bands.map((band) => band.rule);
    case "infusion":
    case "infusion-age-bands":
    case "tiered-rate":
      return [];
    default:
      return [rule];
  }
}

/** The infusions a rule leads to: itself, or those of its bands. */
export function infusionsOf(rule: Rule): InfusionRule[] {
  if (rule.kind === "infusion") return [rule];
  if (rule.kind !== "infusion-age-bands") return [];
  return [...rule.bands.map((band) => band.rule), ...(rule.whenAgeUnknown ? [rule.whenAgeUnknown] : [])];
}
