import type { DoseOption, Formulary, InfusionRule, Rule, SimpleRule } from "@steelyard/core/dosing";
import type { DoseRow } from "./dose-rows.ts";

/** The formulary with edited rows of its dose table in place of its own. */
export function withRows(formulary: Formulary, edits: ReadonlyMap<DoseRow, DoseRow>): Formulary {
  const rowsByOption = new Map<DoseOption, DoseRow[]>();
  for (const [original, edited] of edits) {
    rowsByOption.set(original.option, [...(rowsByOption.get(original.option) ?? []), edited]);
  }
  return {
    ...formulary,
    medicines: formulary.medicines.map((medicine) => ({
      ...medicine,
      uses: medicine.uses.map((use) => ({
        ...use,
        options: use.options.map((option) => withOptionRows(option, rowsByOption.get(option) ?? [])),
      })),
    })),
  };
}

function withOptionRows(option: DoseOption, rows: readonly DoseRow[]): DoseOption {
  const further = option.further?.map((rule, index) => simple(rows, `later ${index + 1}`) ?? rule);
  return {
    ...option,
    title: rows[0]?.option.title ?? option.title,
    rule: withRuleRows(option.rule, rows),
    ...(further && { further }),
  };
}

function withRuleRows(rule: Rule, rows: readonly DoseRow[]): Rule {
  switch (rule.kind) {
    case "tiered-rate": {
      const tiers = rows.flatMap(({ part }) => (part.kind === "tier" ? [part] : []));
      return tiers[0] === undefined ? rule : { ...tiers[0].rule, tiers: tiers.map(({ tier }) => tier) };
    }
    case "infusion":
      return infusion(rows, "first") ?? rule;
    case "infusion-age-bands": {
      const whenAgeUnknown = rule.whenAgeUnknown && (infusion(rows, "age unknown") ?? rule.whenAgeUnknown);
      return {
        ...rule,
        bands: rule.bands.map((band, index) => {
          const part = find(rows, `band ${index + 1}`);
          if (part?.kind !== "infusion" || part.band === undefined) return band;
          const { low, high } = part.band;
          return { lowMonths: low, ...(high !== undefined && { highMonths: high }), rule: part.rule };
        }),
        ...(whenAgeUnknown && { whenAgeUnknown }),
      };
    }
    case "age-bands": {
      const whenAgeUnknown = rule.whenAgeUnknown && (simple(rows, "age unknown") ?? rule.whenAgeUnknown);
      return {
        ...rule,
        bands: rule.bands.map((band, index) => {
          const part = find(rows, `band ${index + 1}`);
          if (part?.kind !== "rule" || part.band === undefined) return band;
          const { low, high } = part.band;
          return { lowMonths: low, ...(high !== undefined && { highMonths: high }), rule: part.rule };
        }),
        ...(whenAgeUnknown && { whenAgeUnknown }),
      };
    }
    case "weight-bands":
      return {
        ...rule,
        bands: rule.bands.map((band, index) => {
          const part = find(rows, `band ${index + 1}`);
          if (part?.kind !== "rule" || part.band === undefined) return band;
          const { low, high } = part.band;
          return { lowKg: low, ...(high !== undefined && { highKg: high }), rule: part.rule };
        }),
      };
    default:
      return simple(rows, "first") ?? rule;
  }
}

function find(rows: readonly DoseRow[], partName: string): DoseRow["part"] | undefined {
  return rows.find((row) => row.partName === partName)?.part;
}

function infusion(rows: readonly DoseRow[], partName: string): InfusionRule | undefined {
  const part = find(rows, partName);
  return part?.kind === "infusion" ? part.rule : undefined;
}

function simple(rows: readonly DoseRow[], partName: string): SimpleRule | undefined {
  const part = find(rows, partName);
  return part?.kind === "rule" ? part.rule : undefined;
}
