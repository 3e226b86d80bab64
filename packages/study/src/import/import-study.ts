import { err, ok, type Result } from "@steelyard/core/result";
import type { StudyTable } from "../table/study-table.ts";
import type { ColumnMapping, MappingChange } from "./column-mapping.ts";
import type { ImportIssue } from "./import-issue.ts";
import type { FileFacts, OpenedFile } from "./open-study-file.ts";
import { proposeMapping } from "./propose-mapping.ts";
import type { CellProblem, StudyFlow } from "./study-flow.ts";
import { TableBuilder } from "./table-builder.ts";

/** A file read as a study: every row is in `flow`, every column in `mapping`, every cell that was not taken in `cellProblems`. */
export interface ImportedStudy {
  readonly facts: FileFacts;
  readonly mapping: readonly ColumnMapping[];
  /** All rows that fit their header, those left out of the comparison too: data quality is theirs as well. */
  readonly table: StudyTable;
  /** The fate of each row of the table, as its place in `FATES`; 0 is included. */
  readonly fates: Int32Array;
  readonly flow: StudyFlow;
  readonly cellProblems: readonly CellProblem[];
}

export interface ImportOptions {
  /** What a person said of single columns. */
  readonly changes?: readonly MappingChange[];
  /** Told now and then, 0 to 1; false stops the reading. */
  readonly onProgress?: (share: number) => boolean | undefined;
}

/**
 * Reads every row of an opened file into columns, in the units of their fields, and counts the fate of each row.
 *
 * Nothing is dropped silently: rows read = included + left out, by reason, with the numbers of the first rows of each. Lengths: a lying length as
 * it is, a standing height + 0.7 cm, a stature of unknown stance by age (lying under 24 months) or else by size (lying under 87 cm).
 * Fails with an `ImportIssue` that names what is wrong and where.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { importStudy, openStudyFile } from "@steelyard/study/import";
 *
 * const bytes = new TextEncoder().encode("height;arm (cm);weight\n98,5;16,1;15,2\n104,1;;\n");
 * const file = await openStudyFile(bytes);
 * const study = file.ok ? importStudy(file.value) : file;
 * assert.ok(study.ok);
 * assert.deepEqual(study.value.table.numbers.get("armMm")?.[0], 161);
 * assert.deepEqual([study.value.flow.read, study.value.flow.included], [2, 1]);
 * ```
 */
export function importStudy(
  file: OpenedFile,
  { changes = [], onProgress }: ImportOptions = {},
): Result<ImportedStudy, ImportIssue> {
  const { header, sample, facts } = file;
  const unknown = changes.find(({ column }) => !header.includes(column));
  if (unknown !== undefined) return err({ type: "column-unknown", column: unknown.column, columns: header });
  const mapping = proposeMapping({ header, sample, decimalMark: facts.decimalMark, changes });
  const has = (...fields: readonly string[]): boolean =>
    mapping.some(({ role }) => role.type === "field" && fields.includes(role.field));
  if (!has("weightKg")) return err({ type: "column-missing", field: "weightKg", columns: header });
  if (!has("lengthCm", "standingHeightCm", "statureCm", "ageMonths"))
    return err({ type: "column-missing", field: "lengthCm", columns: header });
  const builder = new TableBuilder({
    mapping,
    decimalMark: facts.decimalMark,
    expectedRows: file.expectedRows,
  });
  const read = file.read((rows, share) => {
    for (const row of rows) builder.take(row);
    return onProgress?.(share) !== false;
  });
  if (!read.ok) return read;
  const { table, fates } = builder.done();
  return ok({
    facts,
    mapping,
    table,
    fates,
    flow: builder.counter.flow(),
    cellProblems: builder.counter.cellProblems(),
  });
}
