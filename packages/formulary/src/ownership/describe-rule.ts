import type { AcceptedRange, Dose, DoseUnit, InfusionRule, Rule, SimpleRule } from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import { plainDose } from "./readable-value.ts";

/** A rule as a pharmacist writes it, one line for each band: "10 micrograms/kg of ideal weight, at most 1 mg". */
export function describeRule(rule: Rule): string[] {
  switch (rule.kind) {
    case "age-bands":
      return [
        ...rule.bands.map(
          ({ lowMonths, highMonths, rule: own }) =>
            `${edges(lowMonths, highMonths, "months")}: ${simple(own)}`,
        ),
        ...(rule.whenAgeUnknown ? [`age not known: ${simple(rule.whenAgeUnknown)}`] : []),
      ];
    case "weight-bands":
      return rule.bands.map(
        ({ lowKg, highKg, rule: own }) =>
          `${edges(lowKg, highKg, `kg of ${rule.basis} weight`)}: ${simple(own)}`,
      );
    case "infusion":
      return [infusion(rule)];
    case "infusion-age-bands":
      return [
        ...rule.bands.map(
          ({ lowMonths, highMonths, rule: own }) =>
            `${edges(lowMonths, highMonths, "months")}: ${infusion(own)}`,
        ),
        ...(rule.whenAgeUnknown ? [`age not known: ${infusion(rule.whenAgeUnknown)}`] : []),
      ];
    case "tiered-rate": {
      const tiers = rule.tiers.map(
        ({ upToKg, perKg }) =>
          `${plainDose({ amount: perKg, unit: rule.unit, per: `kg/${rule.per}` })} for each kg${upToKg === undefined ? " above" : ` to ${formatNumber(upToKg)} kg`}`,
      );
      const most = rule.maximum ? `, at most ${plainDose({ ...rule.maximum, per: rule.per })}` : "";
      return [`${tiers.join(", ")} (${rule.basis} weight)${most}`];
    }
    default:
      return [simple(rule)];
  }
}

function infusion(rule: InfusionRule): string {
  const { unit, per } = rule;
  const rate = (amount: number): string => plainDose({ amount, unit, per: `kg/${per}` });
  const step = rule.stepPerKg === undefined ? "" : `, in steps of ${rate(rule.stepPerKg)}`;
  const most = rule.maximum ? `, at most ${plainDose({ ...rule.maximum, per })}` : "";
  return `start at ${rate(rule.startPerKg)} of ${rule.basis} weight${ofSubstance(rule)}, range ${formatNumber(rule.lowPerKg)} to ${rate(rule.highPerKg)}${step}${most}`;
}

function simple(rule: SimpleRule): string {
  const { unit } = rule;
  const of = ofSubstance(rule);
  if (rule.kind === "fixed")
    return `${plainDose({ amount: rule.amount, unit })}${of}${range(rule.accepted, unit)}`;
  const limits = [
    ...(rule.maximum ? [`, at most ${plainDose(rule.maximum)}`] : []),
    ...(rule.minimum ? [`, at least ${plainDose(rule.minimum)}`] : []),
  ].join("");
  if (rule.kind === "per-m2") {
    return `${plainDose({ amount: rule.amountPerM2, unit, per: "m2" })} of body surface${of}${limits}`;
  }
  const perKg = plainDose({ amount: rule.amountPerKg, unit, per: "kg" });
  const share =
    rule.shareOfExcess === undefined
      ? ""
      : ` (ideal + ${formatNumber(rule.shareOfExcess)} × the excess over it)`;
  const burnt =
    rule.perBurnPercent === undefined
      ? ""
      : ` for each 1 % of body surface burnt, from ${formatNumber(rule.perBurnPercent.fromPercent)} %`;
  return `${perKg} of ${rule.basis} weight${burnt}${share}${of}${limits}${range(rule.accepted, unit)}`;
}

function range(accepted: AcceptedRange | undefined, unit: DoseUnit): string {
  if (accepted === undefined) return "";
  const high: Dose = { amount: accepted.highPerKg, unit, per: "kg" };
  return ` (accepted: ${formatNumber(accepted.lowPerKg)} to ${plainDose(high)})`;
}

function ofSubstance({ expressedAs }: { readonly expressedAs?: string }): string {
  return expressedAs === undefined ? "" : `, as ${expressedAs}`;
}

/** "from 3 to under 10 kg". */
export function edges(low: number | undefined, high: number | undefined, unit: string): string {
  if (high === undefined)
    return `from ${formatNumber(low ?? 0)} ${low === 1 ? unit.replace("months", "month") : unit}`;
  const from = low === undefined || low === 0 ? "" : `from ${formatNumber(low)} to `;
  return `${from}under ${formatNumber(high)} ${high === 1 ? unit.replace("months", "month") : unit}`;
}
