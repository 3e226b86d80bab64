import { CsvError, type Parser, parse } from "csv-parse";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { BYTE_ENCODING } from "./bytes.ts";
import type { CsvDialect } from "./csv-dialect.ts";

/** A row longer than this comes of a quotation mark that is never closed. */
const LONGEST_ROW_BYTES = 1_000_000;

/** Turns the bytes of a file into rows of cells, as lenient as can be without guessing. */
export function createCsvParser({ delimiter }: CsvDialect): Parser {
  return parse({
    delimiter,
    encoding: BYTE_ENCODING,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: true,
    max_record_size: LONGEST_ROW_BYTES,
  });
}

/** What is said of a file without a header. */
export function blankLinesOnly(): CommandFailure {
  return new CommandFailure(
    EXIT.notServed,
    "The file holds blank lines only: it begins with a line of column names.",
  );
}

/** What the parser could not read, as a sentence; any other error as it is. */
export function explainCsvError(error: unknown): unknown {
  if (!(error instanceof CsvError)) return error;
  const line = "lines" in error ? `, read up to line ${String(error.lines)}` : "";
  const unclosed = error.code === "CSV_QUOTE_NOT_CLOSED" || error.code === "CSV_MAX_RECORD_SIZE";
  const what = unclosed ? "A quotation mark is opened and never closed" : error.message;
  return new CommandFailure(
    EXIT.notServed,
    `${what}${line}. Mend the file and run again; no result was written.`,
  );
}
