import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { BodyModel, SiteProfile } from "@steelyard/core/body";
import { stringify } from "csv-stringify/sync";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { BYTE_ENCODING, fromBytes } from "./bytes.ts";
import { blankLinesOnly, createCsvParser, explainCsvError } from "./csv-parser.ts";
import type { CsvSink } from "./open-sink.ts";
import type { CsvSource } from "./open-source.ts";
import type { Tally } from "./tally.ts";
import { ADDED_COLUMNS, type ColumnPlan, describeHeaderIssue, planColumns } from "./weigh-columns.ts";
import { createRowWeigher, type RowWeigher } from "./weigh-row.ts";

/** Rows written at a time. */
const BATCH = 512;

/** Streams a CSV file through the body model; memory does not grow with the file. */
export async function weighStream({
  source,
  sink,
  tally,
  model,
  site,
  signal,
  onHeader,
}: {
  source: CsvSource;
  sink: CsvSink;
  tally: Tally;
  model: BodyModel;
  site?: SiteProfile | undefined;
  signal: AbortSignal;
  onHeader: (plan: ColumnPlan) => void;
}): Promise<void> {
  const { dialect } = source;
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
        weigh = createRowWeigher({ plan: plan.value, dialect, tally, model, site });
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
    await pipeline(source.chunks, createCsvParser(dialect), weighing, sink.stream, { signal });
  } catch (error) {
    throw explainCsvError(error);
  }
  if (weigh === undefined) throw blankLinesOnly();
}
