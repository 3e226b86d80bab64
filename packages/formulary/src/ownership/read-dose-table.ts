import type { Formulary } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { validateFormulary } from "../validate-formulary.ts";
import { canonicalJson } from "./canonical-json.ts";
import { type DoseRow, doseRows } from "./dose-rows.ts";
import {
  DOSE_TABLE_COLUMNS,
  type DoseTableColumn,
  type DoseTableRow,
  doseTable,
  nameCells,
} from "./dose-table.ts";
import { type CellFault, editedPart } from "./edited-part.ts";
import { withRows } from "./with-rows.ts";

/** Something wrong with a dose table: the row as a spreadsheet counts it, the first under the header being 2. */
export interface DoseTableFault {
  readonly row: number;
  /** Absent where the whole row or its meaning is at fault. */
  readonly column?: DoseTableColumn;
  readonly message: string;
}

/** The cells that say which dose a row is; what they say cannot be changed in the table. */
const NAMES = ["medicine", "use", "option", "part", "kind"] as const satisfies readonly DoseTableColumn[];

/**
 * The formulary with the doses of an edited table, or every fault of the table with its row and column.
 *
 * Amounts, units, bands, ranges, limits, basis and titles may be edited; rows keep their names, and none may be missing
 * or new: medicines and uses are added in the file itself. The result is checked as a whole, and is unsigned if anything
 * changed. Rows in any order.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { doseTable, readDoseTable } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const same = readDoseTable(draftFormulary, doseTable(draftFormulary));
 * assert.deepEqual(same, { ok: true, value: draftFormulary });
 * ```
 */
export function readDoseTable(
  formulary: Formulary,
  rows: readonly Readonly<Record<string, string>>[],
): Result<Formulary, readonly DoseTableFault[]> {
  const missing = DOSE_TABLE_COLUMNS.filter((column) => rows.some((row) => row[column] === undefined));
  if (missing.length > 0)
    return err(missing.map((column) => ({ row: 1, column, message: "the column is missing" })));

  const expected = doseRows(formulary);
  const known = new Map(expected.map((row) => [keyOf(nameCells(row)), row]));
  const faults: DoseTableFault[] = [];
  const rowByKey = new Map<string, { readonly cells: DoseTableRow; readonly row: number }>();
  rows.forEach((record, index) => {
    const row = index + 2;
    const cells = trimmed(record);
    const key = keyOf(cells);
    const first = rowByKey.get(key);
    const message = !known.has(key)
      ? `there is no dose ${NAMES.map((name) => cells[name]).join(", ")} in this formulary`
      : first !== undefined
        ? `is the same dose as row ${first.row}`
        : undefined;
    if (message === undefined) rowByKey.set(key, { cells, row });
    else faults.push({ row, message });
  });
  const edits = new Map<DoseRow, DoseRow>();
  for (const [key, original] of known) {
    const found = rowByKey.get(key);
    if (found === undefined) {
      faults.push({ row: rows.length + 1, message: `the row ${key.replaceAll("\n", ", ")} is missing` });
      continue;
    }
    const { cells, row } = found;
    const edited = editedPart(original, cells);
    if (edited.ok) edits.set(original, edited.value);
    else faults.push(...edited.error.map((fault: CellFault) => ({ row, ...fault })));
  }
  faults.push(...titleFaults(rowByKey), ...maximumFaults(rowByKey));
  if (faults.length > 0) return err([...faults].sort((a, b) => a.row - b.row));

  const changed = withRows(formulary, edits);
  if (canonicalJson(doseTable(changed)) === canonicalJson(doseTable(formulary))) return ok(formulary);
  const { signOff: _, ...unsigned } = changed;
  const checked = validateFormulary({ ...unsigned, signed: false });
  if (checked.ok) return checked;
  return err(
    checked.error.map(({ place, message }) => ({
      row: rowOfPlace(place, rowByKey),
      message: `${place}: ${message}`,
    })),
  );
}

function trimmed(record: Readonly<Record<string, string>>): DoseTableRow {
  return Object.fromEntries(
    DOSE_TABLE_COLUMNS.map((column) => [column, (record[column] ?? "").trim()]),
  ) as DoseTableRow;
}

function keyOf(cells: Partial<DoseTableRow>): string {
  return NAMES.map((name) => cells[name] ?? "").join("\n");
}

type Found = ReadonlyMap<string, { readonly cells: DoseTableRow; readonly row: number }>;

/** One option has one title, and tiers have one maximum: all their rows must agree. */
function titleFaults(found: Found): DoseTableFault[] {
  return disagreements(found, "option_title", () => true);
}

function maximumFaults(found: Found): DoseTableFault[] {
  const isTier = ({ kind }: DoseTableRow): boolean => kind === "tiered-rate";
  const columns = ["maximum", "maximum_unit", "basis"] as const;
  return columns.flatMap((column) => disagreements(found, column, isTier));
}

function disagreements(
  found: Found,
  column: DoseTableColumn,
  isMeant: (cells: DoseTableRow) => boolean,
): DoseTableFault[] {
  const firstByOption = new Map<string, { readonly text: string; readonly row: number }>();
  return [...found.values()].flatMap(({ cells, row }) => {
    if (!isMeant(cells)) return [];
    const option = `${cells.medicine}\n${cells.use}\n${cells.option}`;
    const first = firstByOption.get(option);
    if (first === undefined) {
      firstByOption.set(option, { text: cells[column], row });
      return [];
    }
    return first.text === cells[column]
      ? []
      : [{ row, column, message: `is not the same as in row ${first.row}, which is of the same option` }];
  });
}

/** The first row of the dose that a fault names; the header where it names none. */
function rowOfPlace(place: string, found: Found): number {
  const rows = [...found.values()].filter(({ cells: { medicine, use, option } }) => {
    const named = `${medicine}, use ${use}`;
    return (
      place.startsWith(`${named}, option ${option}`) ||
      (place.startsWith(named) && !place.includes(", option "))
    );
  });
  return Math.min(...rows.map(({ row }) => row), rows.length === 0 ? 1 : Number.POSITIVE_INFINITY);
}
