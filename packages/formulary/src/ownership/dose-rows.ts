import type {
  DoseOption,
  Formulary,
  InfusionRule,
  Medicine,
  SimpleRule,
  TieredRateRule,
  Use,
  WeightTier,
} from "@steelyard/core/dosing";

/** One row of the dose table: a simple rule, an infusion or a tier, with all it stands in. */
export interface DoseRow {
  readonly medicine: Medicine;
  readonly use: Use;
  readonly option: DoseOption;
  readonly part: RulePart;
  /** "first", "band 2", "age unknown", "later 1", "tier 3". */
  readonly partName: string;
}

export type RulePart =
  | { readonly kind: "rule"; readonly rule: SimpleRule; readonly band?: Band }
  | { readonly kind: "infusion"; readonly rule: InfusionRule; readonly band?: Band }
  | { readonly kind: "tier"; readonly rule: TieredRateRule; readonly tier: WeightTier };

export interface Band {
  readonly low: number;
  readonly high?: number;
  readonly unit: "months" | "kg";
}

/** Every row in the order of the formulary. */
export function doseRows(formulary: Formulary): DoseRow[] {
  return formulary.medicines.flatMap((medicine) =>
    medicine.uses.flatMap((use) =>
      use.options.flatMap((option) =>
        partsOf(option).map(([partName, part]) => ({ medicine, use, option, partName, part })),
      ),
    ),
  );
}

function partsOf({ rule, further = [] }: DoseOption): [string, RulePart][] {
  const later = further.map((next, index): [string, RulePart] => [
    `later ${index + 1}`,
    { kind: "rule", rule: next },
  ]);
  switch (rule.kind) {
    case "infusion":
      return [["first", { kind: "infusion", rule }], ...later];
    case "tiered-rate":
      return [
        ...rule.tiers.map((tier, index): [string, RulePart] => [
          `tier ${index + 1}`,
          { kind: "tier", rule, tier },
        ]),
        ...later,
      ];
    case "infusion-age-bands": {
      const bands = rule.bands.map((band, index): [string, RulePart] => [
        `band ${index + 1}`,
        { kind: "infusion", rule: band.rule, band: monthsOf(band) },
      ]);
      const unknown: [string, RulePart][] =
        rule.whenAgeUnknown === undefined
          ? []
          : [["age unknown", { kind: "infusion", rule: rule.whenAgeUnknown }]];
      return [...bands, ...unknown, ...later];
    }
    case "age-bands": {
      const bands = rule.bands.map((band, index): [string, RulePart] => [
        `band ${index + 1}`,
        { kind: "rule", rule: band.rule, band: monthsOf(band) },
      ]);
      const unknown: [string, RulePart][] =
        rule.whenAgeUnknown === undefined
          ? []
          : [["age unknown", { kind: "rule", rule: rule.whenAgeUnknown }]];
      return [...bands, ...unknown, ...later];
    }
    case "weight-bands":
      return [
        ...rule.bands.map(({ lowKg: low, highKg: high, rule: own }, index): [string, RulePart] => [
          `band ${index + 1}`,
          { kind: "rule", rule: own, band: { low, ...(high !== undefined && { high }), unit: "kg" } },
        ]),
        ...later,
      ];
    default:
      return [["first", { kind: "rule", rule }], ...later];
  }
}

function monthsOf({
  lowMonths: low,
  highMonths: high,
}: {
  readonly lowMonths: number;
  readonly highMonths?: number;
}): Band {
  return { low, ...(high !== undefined && { high }), unit: "months" };
}
