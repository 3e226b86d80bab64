import type { Dose, Formulary, SimpleRule } from "@steelyard/core/dosing";
import { type DoseRow, doseRows } from "./dose-rows.ts";

/** The columns of the dose table; the first five name the row and are not for editing. */
export const DOSE_TABLE_COLUMNS = [
  "medicine",
  "use",
  "option",
  "part",
  "kind",
  "option_title",
  "band_low",
  "band_high",
  "band_unit",
  "amount",
  "unit",
  "per",
  "basis",
  "low",
  "high",
  "step",
  "minimum",
  "minimum_unit",
  "maximum",
  "maximum_unit",
] as const;

export type DoseTableColumn = (typeof DOSE_TABLE_COLUMNS)[number];
export type DoseTableRow = Readonly<Record<DoseTableColumn, string>>;

/**
 * Every dose of a formulary as rows of text, for a spreadsheet: one row for each rule, band, tier and later dose.
 *
 * `amount` is the dose (the start of an infusion), `low` and `high` the accepted range per kg (the range of an infusion),
 * bands and tiers are [band_low, band_high). `readDoseTable` takes the rows back.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { doseTable } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const row = doseTable(draftFormulary).find(({ medicine, use }) => medicine === "adrenaline" && use === "arrest");
 * assert.equal(row?.amount, "10");
 * assert.equal(row?.unit, "microgram");
 * ```
 */
export function doseTable(formulary: Formulary): DoseTableRow[] {
  return doseRows(formulary).map((row) => ({ ...emptyRow(), ...nameCells(row), ...ruleCells(row) }));
}

/** The cells that name a row. */
export function nameCells({ medicine, use, option, partName, part }: DoseRow): Partial<DoseTableRow> {
  return {
    medicine: medicine.id,
    use: use.id,
    option: option.id,
    part: partName,
    kind: part.rule.kind,
    option_title: option.title,
  };
}

function ruleCells({ part }: DoseRow): Partial<DoseTableRow> {
  if (part.kind === "tier") {
    const { tier, rule } = part;
    return {
      ...bandCells({ high: tier.upToKg, unit: "kg" }),
      amount: cell(tier.perKg),
      unit: rule.unit,
      per: `kg/${rule.per}`,
      basis: rule.basis,
      ...limitCells({ maximum: rule.maximum }),
    };
  }
  if (part.kind === "infusion") {
    const { rule, band } = part;
    return {
      ...(band && bandCells(band)),
      amount: cell(rule.startPerKg),
      unit: rule.unit,
      per: `kg/${rule.per}`,
      basis: rule.basis,
      low: cell(rule.lowPerKg),
      high: cell(rule.highPerKg),
      step: cell(rule.stepPerKg),
      ...limitCells({ maximum: rule.maximum }),
    };
  }
  const { rule, band } = part;
  return { ...(band && bandCells(band)), ...simpleCells(rule) };
}

function simpleCells(rule: SimpleRule): Partial<DoseTableRow> {
  switch (rule.kind) {
    case "per-kg":
      return {
        amount: cell(rule.amountPerKg),
        unit: rule.unit,
        per: "kg",
        basis: rule.basis,
        low: cell(rule.accepted?.lowPerKg),
        high: cell(rule.accepted?.highPerKg),
        ...limitCells(rule),
      };
    case "per-m2":
      return { amount: cell(rule.amountPerM2), unit: rule.unit, per: "m2", ...limitCells(rule) };
    case "fixed":
      return {
        amount: cell(rule.amount),
        unit: rule.unit,
        low: cell(rule.accepted?.lowPerKg),
        high: cell(rule.accepted?.highPerKg),
      };
  }
}

function bandCells({
  low,
  high,
  unit,
}: {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly unit: string;
}): Partial<DoseTableRow> {
  return { band_low: cell(low), band_high: cell(high), band_unit: unit };
}

function limitCells({
  minimum,
  maximum,
}: {
  readonly minimum?: Dose | undefined;
  readonly maximum?: Dose | undefined;
}): Partial<DoseTableRow> {
  return {
    minimum: cell(minimum?.amount),
    minimum_unit: minimum?.unit ?? "",
    maximum: cell(maximum?.amount),
    maximum_unit: maximum?.unit ?? "",
  };
}

function cell(value: number | undefined): string {
  return value === undefined ? "" : String(value);
}

function emptyRow(): DoseTableRow {
  return Object.fromEntries(DOSE_TABLE_COLUMNS.map((column) => [column, ""])) as DoseTableRow;
}
