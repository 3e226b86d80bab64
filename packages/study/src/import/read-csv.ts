import { err, ok, type Result } from "@steelyard/core/result";
import Papa from "papaparse";
import { type CsvDialect, detectDialect } from "./csv-dialect.ts";
import type { FileKind } from "./file-kind.ts";
import type { ImportIssue } from "./import-issue.ts";

type TextKind = Extract<FileKind, { type: "text" }>;
/** Takes rows as they come; false stops the reading. */
type TakeRows = (rows: readonly string[][], bytesRead: number) => boolean;

const CHUNK = 1 << 21;
const DIALECT_HEAD = 1 << 16;
/** A record longer than this means that a quotation mark was never closed. */
const LONGEST_RECORD = 1 << 26;

/** The first lines as text, and how the file is written. */
export function readCsvDialect(bytes: Uint8Array, { encoding, skip }: TextKind): CsvDialect {
  return detectDialect(new TextDecoder(encoding).decode(bytes.subarray(skip, skip + DIALECT_HEAD)));
}

/** Reads a text file chunk by chunk, so that only the bytes themselves and the rows at hand are in memory. */
export function readCsv({
  bytes,
  kind,
  dialect,
  take,
}: {
  bytes: Uint8Array;
  kind: TextKind;
  dialect: CsvDialect;
  take: TakeRows;
}): Result<undefined, ImportIssue> {
  const decoder = new TextDecoder(kind.encoding);
  const parser = new Papa.Parser({ delimiter: dialect.delimiter, newline: dialect.lineEnd, quoteChar: '"' });
  let rest = "";
  let rowsRead = 0;
  for (let at = kind.skip; at < bytes.length; at += CHUNK) {
    const end = Math.min(at + CHUNK, bytes.length);
    const last = end === bytes.length;
    const text = rest + decoder.decode(bytes.subarray(at, end), { stream: !last });
    const { data, errors, meta } = parser.parse(text, 0, !last) as Papa.ParseResult<string[]>;
    rest = last ? "" : text.slice(meta.cursor);
    const unclosed = last ? errors.find(({ code }) => code === "MissingQuotes") : undefined;
    if (unclosed !== undefined || rest.length > LONGEST_RECORD) {
      return err({ type: "quote-not-closed", row: rowsRead + (unclosed?.row ?? data.length) });
    }
    // What follows the last line end is no row.
    if (last && data.at(-1)?.length === 1 && data.at(-1)?.[0] === "") data.pop();
    rowsRead += data.length;
    if (!take(data, end)) break;
  }
  return ok(undefined);
}
