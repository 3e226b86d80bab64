import { Writable } from "node:stream";
import { pipeline } from "node:stream/promises";
import {
  cumulativeWeight,
  estimateWeight,
  type MeasurementErrors,
  uncalibratedSite,
  type WeighedChild,
} from "@steelyard/core/body";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fromBytes } from "../weigh/bytes.ts";
import { blankLinesOnly, createCsvParser, explainCsvError } from "../weigh/csv-parser.ts";
import type { CsvSource } from "../weigh/open-source.ts";
import { bodyReason, createRowReader, entryReason, isMissing, type RowReader } from "../weigh/row-reader.ts";
import { countMarked, type Tally } from "../weigh/tally.ts";
import {
  type ColumnPlan,
  describeHeaderIssue,
  MEASUREMENT_COLUMNS,
  planColumns,
} from "../weigh/weigh-columns.ts";
import { isCalendarDate } from "./calendar-date.ts";

const WEIGHT_COLUMN = "weight_kg";
const DATE_COLUMN = "date";
const RULES = { fields: { ...MEASUREMENT_COLUMNS, [WEIGHT_COLUMN]: "scaleKg" }, added: [] } as const;
/** Outside this much of a child's own estimate a scale weight is worth a second look. */
const unlikelyP = 0.0025;

/** The children of a file who were measured and weighed. */
export interface WeighedRows {
  readonly children: WeighedChild[];
  /** First and last day, where the rows have any. */
  dates?: { readonly from: string; readonly to: string };
  /** Rows whose date could not be read; they are used all the same. */
  undated: number;
  /** Numbers of the rows, from 1, whose scale weight lies far outside what the measurements predict. */
  readonly unlikely: number[];
}

/** Reads every row of a CSV file, keeps the children a calibration can use and counts the others by reason. */
export async function readWeighedRows(given: {
  source: CsvSource;
  tally: Tally;
  errors: MeasurementErrors;
  signal: AbortSignal;
  onHeader: (plan: Pick<ColumnPlan, "passedOn" | "known">) => void;
}): Promise<WeighedRows> {
  const { source, tally, errors, signal } = given;
  const rows: WeighedRows = { children: [], undated: 0, unlikely: [] };
  let readRow: RowReader | undefined;
  let dateIndex = -1;
  const take = (cells: string[]): void => {
    if (readRow === undefined) {
      const header = cells.map(fromBytes);
      const plan = planWeighed(header);
      dateIndex = header.findIndex(isDateColumn);
      given.onHeader({ ...plan, passedOn: plan.passedOn.filter((name) => !isDateColumn(name)) });
      readRow = createRowReader({ plan, dialect: source.dialect });
      return;
    }
    tally.rows++;
    takeRow({ cells, row: readRow(cells), dateIndex, rows, tally, errors });
  };
  const taking = new Writable({
    objectMode: true,
    write(cells: string[], _encoding, done) {
      try {
        take(cells);
        done();
      } catch (error) {
        done(error as Error);
      }
    },
  });
  try {
    await pipeline(source.chunks, createCsvParser(source.dialect), taking, { signal });
  } catch (error) {
    throw explainCsvError(error);
  }
  if (readRow === undefined) throw blankLinesOnly();
  return rows;
}

function takeRow(given: {
  cells: readonly string[];
  row: ReturnType<RowReader>;
  dateIndex: number;
  rows: WeighedRows;
  tally: Tally;
  errors: MeasurementErrors;
}): void {
  const { cells, dateIndex, rows, tally, errors } = given;
  const { read, shapeNote } = given.row;
  if (!read.ok) {
    const [first] = read.error;
    if (first) countMarked(tally, entryReason(first));
    return;
  }
  const { scaleKg, ...measurements } = read.value.measurements;
  if (scaleKg === undefined) {
    countMarked(tally, "scale weight missing");
    return;
  }
  const estimate = estimateWeight(measurements, { site: { ...uncalibratedSite, errors } });
  if (!estimate.ok) {
    countMarked(tally, bodyReason(estimate.error));
    return;
  }
  tally.served++;
  if (read.value.notices.length + estimate.value.warnings.length + shapeNote.length > 0) tally.noted++;
  const p = cumulativeWeight(estimate.value, scaleKg);
  if (p < unlikelyP || p > 1 - unlikelyP) rows.unlikely.push(tally.rows);
  rows.children.push({ measurements, weightKg: scaleKg });
  const date = cells[dateIndex];
  if (date === undefined || isMissing(date)) return;
  // A time of day may follow.
  const day = date.trim().slice(0, 10);
  if (!isCalendarDate(day)) rows.undated++;
  else {
    // Days written so sort as texts.
    const [from = day, , to = day] = [rows.dates?.from ?? day, day, rows.dates?.to ?? day].sort();
    rows.dates = { from, to };
  }
}

function planWeighed(header: readonly string[]): ColumnPlan {
  const plan = planColumns(header, RULES);
  if (!plan.ok) throw new CommandFailure(EXIT.notServed, describeHeaderIssue(plan.error));
  if (!plan.value.columns.some(({ field }) => field === "scaleKg")) {
    throw new CommandFailure(
      EXIT.notServed,
      `No column holds the weight from the scale: ${WEIGHT_COLUMN} is required. The header reads: ${header.join(", ")}.`,
    );
  }
  return plan.value;
}

function isDateColumn(name: string): boolean {
  return name.trim().toLowerCase() === DATE_COLUMN;
}
