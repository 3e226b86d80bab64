import type { BodyIssue } from "@steelyard/core/body";
import {
  type EntryField,
  type EntryIssue,
  type MeasurementsRead,
  readMeasurements,
} from "@steelyard/core/entry";
import type { Result } from "@steelyard/core/result";
import { describeField } from "@steelyard/core/wording";
import { fromBytes } from "./bytes.ts";
import type { CsvDialect } from "./csv-dialect.ts";
import type { ColumnPlan } from "./weigh-columns.ts";

/** What statistics programs write for a missing value. */
const MISSING = new Set(["", "NA", "N/A", "n/a", "NULL", "null", "NaN", "."]);

interface RowRead {
  /** What is said of a row that is wider or narrower than the header. */
  readonly shapeNote: readonly string[];
  readonly read: Result<MeasurementsRead, readonly EntryIssue[]>;
}

/** Reads the measurements of one row, whose cells are brought to the width of the header in place. */
export type RowReader = (cells: string[]) => RowRead;

/** Makes the function that reads the rows of one file. */
export function createRowReader({ plan, dialect }: { plan: ColumnPlan; dialect: CsvDialect }): RowReader {
  const options = { decimalMark: dialect.decimalMark, ageUnitKnown: true } as const;
  // One object for all rows: a million of them would be the larger part of the work.
  const texts: { [F in EntryField]?: string | undefined } = {};
  return (cells) => {
    const shapeNote = mendWidth(cells, plan.width);
    for (const { field, index } of plan.columns) {
      const cell = cells[index] as string;
      texts[field] = isMissing(cell) ? undefined : fromBytes(cell);
    }
    return { shapeNote, read: readMeasurements(texts, options) };
  };
}

/** Whether a cell says that nothing is known. */
export function isMissing(cell: string): boolean {
  return cell === "" || (!startsWithDigit(cell) && MISSING.has(cell));
}

function startsWithDigit(cell: string): boolean {
  const code = cell.charCodeAt(0);
  return code >= 48 && code <= 57;
}

/** Brings a row to the width of the header, so that the added cells stand under their names; nothing is lost. */
function mendWidth(cells: string[], width: number): readonly string[] {
  const had = cells.length;
  if (had === width) return [];
  if (had < width) {
    while (cells.length < width) cells.push("");
    return [`The row has ${had} of ${width} cells.`];
  }
  const surplus = cells.splice(width).map((cell) => fromBytes(cell));
  return [`The row has ${had} cells and the header ${width}; left over: ${surplus.join(" | ")}.`];
}

/** "length missing", "arm circumference out of range". */
export function bodyReason(issue: BodyIssue): string {
  const reason = issue.type.replace("measurement-", "").replaceAll("-", " ");
  return "measurement" in issue ? `${describeField(issue.measurement)} ${reason}` : reason;
}

/** "arm circumference not a number". */
export function entryReason({ type, field }: EntryIssue): string {
  return `${describeField(field)} ${type.replaceAll("-", " ")}`;
}
