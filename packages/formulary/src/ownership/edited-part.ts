import type { Basis, Dose, DoseUnit, SimpleRule } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import * as v from "valibot";
import { basis, doseUnit } from "../schema/rule-schema.ts";
import type { Band, DoseRow, RulePart } from "./dose-rows.ts";
import type { DoseTableColumn, DoseTableRow } from "./dose-table.ts";

export interface CellFault {
  readonly column: DoseTableColumn;
  readonly message: string;
}

/** The row with what its cells say, or what is wrong with each cell. */
export function editedPart(row: DoseRow, cells: DoseTableRow): Result<DoseRow, readonly CellFault[]> {
  const faults: CellFault[] = [];
  const reader = cellReader(cells, faults);
  const part = readPart(row.part, reader);
  if (cells.option_title === "") reader.fault("option_title", "must not be empty");
  if (faults.length > 0) return err(faults);
  return ok({ ...row, option: { ...row.option, title: cells.option_title }, part });
}

type CellReader = ReturnType<typeof cellReader>;

/** Takes cells one by one and notes what is wrong; what it gives for a faulty cell is never used. */
function cellReader(cells: DoseTableRow, faults: CellFault[]) {
  const fault = (column: DoseTableColumn, message: string): void => {
    faults.push({ column, message });
  };
  const optionalNumber = (column: DoseTableColumn): number | undefined => {
    const text = cells[column];
    if (text === "") return undefined;
    if (/^\d+(\.\d+)?$/.test(text)) return Number(text);
    const hint = /^\d+,\d+$/.test(text) ? ": write a decimal point" : "";
    fault(column, `must be a plain number such as 0.5, not "${text}"${hint}`);
    return 1;
  };
  const number = (column: DoseTableColumn): number => {
    const value = optionalNumber(column);
    if (value === undefined) fault(column, "must not be empty");
    return value ?? 1;
  };
  const unit = (column: DoseTableColumn): DoseUnit => {
    const text = cells[column];
    const parsed = v.safeParse(doseUnit, text);
    if (parsed.success) return parsed.output;
    fault(column, `must be one of g, mg, microgram, nanogram, mmol, unit, mL, puff, J: it is "${text}"`);
    return "mg";
  };
  const readBasis = (): Basis => {
    const text = cells.basis;
    const parsed = v.safeParse(basis, text);
    if (parsed.success) return parsed.output;
    fault("basis", `must be one of total, ideal, adjusted, lean: it is "${text}"`);
    return "total";
  };
  const limit = (column: "minimum" | "maximum"): Dose | undefined => {
    const amount = optionalNumber(column);
    const unitColumn = `${column}_unit` as const;
    if (amount === undefined) {
      if (cells[unitColumn] !== "") fault(unitColumn, `must be empty where ${column} is`);
      return undefined;
    }
    return { amount, unit: unit(unitColumn) };
  };
  const empty = (...columns: readonly DoseTableColumn[]): void => {
    for (const column of columns) {
      if (cells[column] !== "") fault(column, `has no meaning for a dose of kind ${cells.kind}`);
    }
  };
  const same = (column: DoseTableColumn, text: string): void => {
    if (cells[column] !== text) fault(column, `cannot be changed here: it is "${text}" in the formulary`);
  };
  return { fault, optionalNumber, number, unit, basis: readBasis, limit, empty, same };
}

function readPart(part: RulePart, read: CellReader): RulePart {
  switch (part.kind) {
    case "tier": {
      read.empty("band_low", "low", "high", "step", "minimum", "minimum_unit");
      read.same("band_unit", "kg");
      read.same("unit", part.rule.unit);
      read.same("per", `kg/${part.rule.per}`);
      const upToKg = read.optionalNumber("band_high");
      const maximum = read.limit("maximum");
      const { maximum: _, ...rule } = part.rule;
      return {
        kind: "tier",
        rule: { ...rule, basis: read.basis(), ...(maximum && { maximum }) },
        tier: { ...(upToKg !== undefined && { upToKg }), perKg: read.number("amount") },
      };
    }
    case "infusion": {
      read.empty("minimum", "minimum_unit");
      const band = readBand(part.band, read);
      read.same("per", `kg/${part.rule.per}`);
      const { maximum: _, stepPerKg: __, ...rule } = part.rule;
      const stepPerKg = read.optionalNumber("step");
      const maximum = read.limit("maximum");
      return {
        kind: "infusion",
        rule: {
          ...rule,
          unit: read.unit("unit"),
          basis: read.basis(),
          startPerKg: read.number("amount"),
          lowPerKg: read.number("low"),
          highPerKg: read.number("high"),
          ...(stepPerKg !== undefined && { stepPerKg }),
          ...(maximum && { maximum }),
        },
        ...(band && { band }),
      };
    }
    case "rule": {
      read.empty("step");
      const band = readBand(part.band, read);
      return { kind: "rule", rule: readRule(part.rule, read), ...(band && { band }) };
    }
  }
}

function readBand(band: Band | undefined, read: CellReader): Band | undefined {
  if (band === undefined) {
    read.empty("band_low", "band_high", "band_unit");
    return undefined;
  }
  read.same("band_unit", band.unit);
  const high = read.optionalNumber("band_high");
  return { low: read.number("band_low"), ...(high !== undefined && { high }), unit: band.unit };
}

function readRule(rule: SimpleRule, read: CellReader): SimpleRule {
  if (rule.kind === "per-m2") {
    read.empty("low", "high", "basis");
    read.same("per", "m2");
    return {
      ...withoutLimits(rule),
      amountPerM2: read.number("amount"),
      unit: read.unit("unit"),
      ...limits(read),
    };
  }
  const accepted = readAccepted(rule.accepted, read);
  const { accepted: _, ...rest } = rule;
  if (rest.kind === "fixed") {
    read.empty("per", "basis", "minimum", "minimum_unit", "maximum", "maximum_unit");
    return { ...rest, amount: read.number("amount"), unit: read.unit("unit"), ...(accepted && { accepted }) };
  }
  read.same("per", "kg");
  return {
    ...withoutLimits(rest),
    amountPerKg: read.number("amount"),
    unit: read.unit("unit"),
    basis: read.basis(),
    ...(accepted && { accepted }),
    ...limits(read),
  };
}

function withoutLimits<R extends { readonly minimum?: Dose; readonly maximum?: Dose }>(
  rule: R,
): Omit<R, "minimum" | "maximum"> {
  const { minimum: _, maximum: __, ...rest } = rule;
  return rest;
}

function limits(read: CellReader): { readonly minimum?: Dose; readonly maximum?: Dose } {
  const minimum = read.limit("minimum");
  const maximum = read.limit("maximum");
  return { ...(maximum && { maximum }), ...(minimum && { minimum }) };
}

/** A range that the file does not have needs a source, which a table has no room for. */
function readAccepted(
  accepted: NonNullable<Extract<SimpleRule, { kind: "per-kg" }>["accepted"]> | undefined,
  read: CellReader,
): typeof accepted {
  const lowPerKg = read.optionalNumber("low");
  const highPerKg = read.optionalNumber("high");
  if (lowPerKg === undefined && highPerKg === undefined) return undefined;
  if (accepted === undefined) {
    read.fault("low", "an accepted range needs a source: add it in the file of the medicine");
    return undefined;
  }
  if (lowPerKg === undefined) read.fault("low", "must not be empty where high is given");
  if (highPerKg === undefined) read.fault("high", "must not be empty where low is given");
  return { ...accepted, lowPerKg: lowPerKg ?? 1, highPerKg: highPerKg ?? 1 };
}
