import type { DecimalMark } from "@steelyard/core/entry";
import { err, ok, type Result } from "@steelyard/core/result";
import { readTransport } from "../transport/index.ts";
import { type TextEncoding, tellFileKind } from "./file-kind.ts";
import type { ImportIssue } from "./import-issue.ts";
import { isMissingCell } from "./read-cell.ts";
import { readCsv, readCsvDialect } from "./read-csv.ts";
import { readWorkbook } from "./read-workbook.ts";

/** How the file is written; part of the report. */
export interface FileFacts {
  readonly type: "text" | "workbook" | "transport";
  readonly bytes: number;
  readonly encoding?: TextEncoding;
  readonly delimiter?: string;
  readonly decimalMark: DecimalMark;
  readonly sheet?: string;
  readonly sheets?: readonly string[];
  /** Cells with a formula: their last computed value is read. */
  readonly formulaCells?: { readonly count: number; readonly first: readonly string[] };
  /** Names that stood in the header twice, with the name they got. */
  readonly renamed: readonly { readonly column: string; readonly to: string }[];
}

type Rows = readonly (readonly string[])[];

/** A file that was looked into: its header, its first rows, and a way to read all of it. */
export interface OpenedFile {
  readonly facts: FileFacts;
  readonly header: readonly string[];
  readonly sample: Rows;
  /** Rows to expect, roughly. */
  readonly expectedRows: number;
  readonly read: (take: (rows: Rows, share: number) => boolean) => Result<undefined, ImportIssue>;
}

const SAMPLE_ROWS = 2000;
/** As many as a sheet of a workbook can hold. */
const MOST_COLUMNS = 16_384;

/**
 * Opens a CSV or TSV text, an .xlsx workbook or a SAS transport file, told apart by its bytes.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStudyFile } from "@steelyard/study/import";
 *
 * const file = await openStudyFile(new TextEncoder().encode("length_cm;weight_kg\n136,5;28\n"));
 * assert.ok(file.ok && file.value.facts.decimalMark === ",");
 * const empty = await openStudyFile(new Uint8Array());
 * assert.ok(!empty.ok && empty.error.type === "empty-file");
 * ```
 */
export async function openStudyFile(
  bytes: Uint8Array,
  options: { sheet?: string } = {},
): Promise<Result<OpenedFile, ImportIssue>> {
  const kind = tellFileKind(bytes);
  if (!kind.ok) return kind;
  switch (kind.value.type) {
    case "text":
      return openText(bytes, kind.value);
    case "workbook": {
      const workbook = await readWorkbook(bytes, options);
      if (!workbook.ok) return workbook;
      const { rows, sheet, sheets, formulaCells } = workbook.value;
      const first = rows.findIndex((row) => row.some((cell) => cell !== ""));
      const facts = {
        type: "workbook",
        bytes: bytes.length,
        decimalMark: ".",
        sheet,
        sheets,
        formulaCells,
      } as const;
      return openRows({ facts, header: rows[first] ?? [], rows: rows.slice(first + 1) });
    }
    case "transport": {
      const file = readTransport(bytes);
      if (!file.ok) {
        const { error } = file;
        return err(
          error.type === "truncated"
            ? { type: "transport-damaged", atByte: error.at }
            : error.type === "version-not-supported"
              ? { type: "transport-version", found: error.found }
              : { type: "not-a-table", found: "binary", atByte: 0 },
        );
      }
      const columns = [...file.value.columns.values()];
      const rows = Array.from({ length: file.value.rows }, (_, row) =>
        columns.map((column) => String(column[row] ?? "")),
      );
      const facts = {
        type: "transport",
        bytes: bytes.length,
        decimalMark: ".",
        sheet: file.value.member,
      } as const;
      return openRows({ facts, header: [...file.value.columns.keys()], rows });
    }
  }
}

function openText(
  bytes: Uint8Array,
  kind: { type: "text"; encoding: TextEncoding; skip: number },
): Result<OpenedFile, ImportIssue> {
  const dialect = readCsvDialect(bytes, kind);
  const head: (readonly string[])[] = [];
  const headBytes = bytes.subarray(0, kind.skip + (1 << 21));
  const looked = readCsv({
    bytes: headBytes,
    kind,
    dialect,
    take: (rows) => {
      for (const row of rows)
        if (head.length <= SAMPLE_ROWS && (row.length > 1 || row[0]?.trim() !== "")) head.push(row);
      return head.length <= SAMPLE_ROWS;
    },
  });
  if (!looked.ok && headBytes.length === bytes.length) return looked;
  // The last row of a piece of the file may be cut in two.
  if (headBytes.length < bytes.length && head.length > 1) head.pop();
  const [header = [], ...sample] = head;
  const facts = {
    type: "text",
    bytes: bytes.length,
    encoding: kind.encoding,
    delimiter: dialect.delimiter,
    decimalMark: dialect.decimalMark,
  } as const;
  const checked = checkHeader(header, sample.length);
  if (!checked.ok) return checked;
  const sampleBytes = sample.reduce(
    (sum, row) => sum + row.reduce((own, cell) => own + cell.length + 1, 0),
    0,
  );
  const width = kind.encoding.startsWith("utf-16") ? 2 : 1;
  return ok({
    facts: { ...facts, renamed: checked.value.renamed },
    header: checked.value.header,
    sample,
    expectedRows: Math.ceil((1.05 * bytes.length) / width / (sampleBytes / sample.length)),
    read: (take) => {
      let header = true;
      return readCsv({
        bytes,
        kind,
        dialect,
        take: (rows, bytesRead) => {
          const start = header ? 1 + rows.findIndex((row) => row.length > 1 || row[0]?.trim() !== "") : 0;
          if (start > 0 || !header) header = false;
          return take(start > 0 ? rows.slice(start) : rows, bytesRead / bytes.length);
        },
      });
    },
  });
}

function openRows(given: {
  facts: Omit<FileFacts, "renamed">;
  header: readonly string[];
  rows: Rows;
}): Result<OpenedFile, ImportIssue> {
  const { facts, rows } = given;
  const filled = rows.filter((row) => row.some((cell) => cell !== ""));
  const checked = checkHeader(given.header, filled.length, { oneColumn: true });
  if (!checked.ok) return checked;
  return ok({
    facts: { ...facts, renamed: checked.value.renamed },
    header: checked.value.header,
    sample: filled.slice(0, SAMPLE_ROWS),
    expectedRows: rows.length,
    read: (take) => {
      take(
        rows.map((row) => (row.some((cell) => cell !== "") ? row : [""])),
        1,
      );
      return ok(undefined);
    },
  });
}

function checkHeader(
  header: readonly string[],
  rows: number,
  { oneColumn = false } = {},
): Result<Pick<OpenedFile, "header"> & Pick<FileFacts, "renamed">, ImportIssue> {
  if (header.length > MOST_COLUMNS)
    return err({ type: "too-many-columns", columns: header.length, most: MOST_COLUMNS });
  if (header.length === 0) return err({ type: "empty-file" });
  if (header.length === 1 && !oneColumn)
    return err({ type: "one-column", header: (header[0] as string).slice(0, 200) });
  const numeric = header.filter((cell) => isMissingCell(cell) || /^\s*[+-]?\d+([.,]\d+)?\s*$/.test(cell));
  if (numeric.length === header.length) return err({ type: "header-missing", firstRow: header.slice(0, 8) });
  if (rows === 0) return err({ type: "header-only", columns: header.length });
  const seen = new Set<string>();
  const renamed: { column: string; to: string }[] = [];
  const names = header.map((cell, i) => {
    const plain = cell.trim() === "" ? `column ${i + 1}` : cell.trim();
    let name = plain;
    for (let again = 2; seen.has(name); again++) name = `${plain} (${again})`;
    if (name !== cell.trim()) renamed.push({ column: cell.trim(), to: name });
    seen.add(name);
    return name;
  });
  return ok({ header: names, renamed });
}
