import { parse } from "csv-parse/sync";

/** One row of an LMS table, its numbers still as they were printed. */
export interface PrintedRow {
  readonly x: string;
  readonly L: string;
  readonly M: string;
  readonly S: string;
}

/** Rows by `source indicator sex`, in the order of the file. */
export type LmsFile = ReadonlyMap<string, readonly PrintedRow[]>;

const columns = ["source", "indicator", "sex", "x", "L", "M", "S"] as const;

/** Reads the text of a file with columns source, indicator, sex (M or F), x, L, M, S. */
export function readLmsFile(text: string): LmsFile {
  const records: Record<string, string>[] = parse(text, { columns: true, skip_empty_lines: true, bom: true });
  const file = new Map<string, PrintedRow[]>();
  for (const [index, record] of records.entries()) {
    const missing = columns.find((column) => !record[column]);
    if (missing) throw new Error(`Cannot read the LMS file as row ${index + 1} has no ${missing}`);
    const { source, indicator, sex, x = "", L = "", M = "", S = "" } = record;
    for (const number of [x, L, M, S]) {
      if (!Number.isFinite(Number(number))) {
        throw new Error(
          `Cannot read the LMS file as row ${index + 1} holds a value that is no number: ${number}`,
        );
      }
    }
    const key = `${source} ${indicator} ${sex}`;
    const rows = file.get(key);
    if (rows) rows.push({ x, L, M, S });
    else file.set(key, [{ x, L, M, S }]);
  }
  return file;
}
