import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { BodyModel } from "@steelyard/core/body";
import { CsvError, parse } from "csv-parse";
import { stringify } from "csv-stringify/sync";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { BYTE_ENCODING, fromBytes } from "./bytes.ts";
import type { CsvSink } from "./open-sink.ts";
import type { CsvSource } from "./open-source.ts";
import type { Tally } from "./tally.ts";
import { ADDED_COLUMNS, type ColumnPlan, describeHeaderIssue, planColumns } from "./weigh-columns.ts";
import { createRowWeigher, type RowWeigher } from "./weigh-row.ts";

/** Rows written at a time. */
const BATCH = 512;
/** A row longer than this comes of a quotation mark that is never closed. */
const LONGEST_ROW_BYTES = 1_000_000;

/** Streams a CSV file through the body model; memory does not grow with the file. */
export async function weighStream({
  source,
  sink,
  tally,
  model,
  signal,
  onHeader,
}: {
  source: CsvSource;
  sink: CsvSink;
  tally: Tally;
  model: BodyModel;
  signal: AbortSignal;
  onHeader: (plan: ColumnPlan) => void;
}): Promise<void> {
  const { dialect } = source;
  const parser = parse({
    delimiter: dialect.delimiter,
    encoding: BYTE_ENCODING,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: true,
    max_record_size: LONGEST_ROW_BYTES,
  });
  const write = (rows: readonly string[][]): Buffer =>
    Buffer.from(
      stringify(rows as string[][], { delimiter: dialect.delimiter, record_delimiter: dialect.lineEnd }),
      BYTE_ENCODING,
    );

  let weigh: RowWeigher | undefined;
  let batch: string[][] = [];
  const weighing = new Transform({
    writableObjectMode: true,
    writableHighWaterMark: BATCH,
    transform(cells: string[], _encoding, done) {
      if (weigh === undefined) {
        const plan = planColumns(cells.map(fromBytes));
        if (!plan.ok) return done(new CommandFailure(EXIT.notServed, describeHeaderIssue(plan.error)));
        onHeader(plan.value);
        weigh = createRowWeigher({ plan: plan.value, dialect, tally, model });
        if (dialect.hasByteOrderMark) this.push(Buffer.from([0xef, 0xbb, 0xbf]));
        return done(null, write([[...cells, ...ADDED_COLUMNS]]));
      }
      weigh(cells);
      batch.push(cells);
      if (batch.length < BATCH) return done();
      const rows = batch;
      batch = [];
      return done(null, write(rows));
    },
    flush(done) {
      done(null, batch.length > 0 ? write(batch) : undefined);
    },
  });

  try {
    await pipeline(source.chunks, parser, weighing, sink.stream, { signal });
  } catch (error) {
    throw error instanceof CsvError ? csvFailure(error) : error;
  }
  if (weigh === undefined) {
    throw new CommandFailure(
      EXIT.notServed,
      "The file holds blank lines only: it begins with a line of column names.",
    );
  }
}

function csvFailure(error: CsvError): CommandFailure {
  const line = "lines" in error ? `, read up to line ${String(error.lines)}` : "";
  const unclosed = error.code === "CSV_QUOTE_NOT_CLOSED" || error.code === "CSV_MAX_RECORD_SIZE";
  const what = unclosed ? "A quotation mark is opened and never closed" : error.message;
  return new CommandFailure(
    EXIT.notServed,
    `${what}${line}. Mend the file and run again; no result was written.`,
  );
}
