import { type BodyIssue, type BodyModel, estimateWeight, idealWeight } from "@steelyard/core/body";
import {
  type DecimalMark,
  type EntryField,
  type EntryIssue,
  type EntryNotice,
  readMeasurements,
} from "@steelyard/core/entry";
import {
  describeBodyIssue,
  describeBodyWarning,
  describeEntryIssue,
  describeEntryNotice,
  describeField,
} from "@steelyard/core/wording";
import { fromBytes, toBytes } from "./bytes.ts";
import type { CsvDialect } from "./csv-dialect.ts";
import { countMarked, type Tally } from "./tally.ts";
import type { ColumnPlan } from "./weigh-columns.ts";

/** What statistics programs write for a missing value. */
const MISSING = new Set(["", "NA", "N/A", "n/a", "NULL", "null", "NaN", "."]);

function isMissing(cell: string): boolean {
  return cell === "" || (!startsWithDigit(cell) && MISSING.has(cell));
}

function startsWithDigit(cell: string): boolean {
  const code = cell.charCodeAt(0);
  return code >= 48 && code <= 57;
}

/** Adds weight and notes to the cells of one row, in place, and counts it. */
export type RowWeigher = (cells: string[]) => void;

/** Makes the function that weighs the rows of one file. */
export function createRowWeigher({
  plan,
  dialect,
  tally,
  model,
}: {
  plan: ColumnPlan;
  dialect: CsvDialect;
  tally: Tally;
  model: BodyModel;
}): RowWeigher {
  const options = { decimalMark: dialect.decimalMark, ageUnitKnown: true } as const;
  const modelOption = { model };
  const writeKg = createKgWriter(dialect.decimalMark);
  // One object for all rows: a million of them would be the larger part of the work.
  const texts: { [F in EntryField]?: string | undefined } = {};

  return (cells) => {
    tally.rows++;
    const shapeNote = mendWidth(cells, plan.width);
    for (const { field, index } of plan.columns) {
      const cell = cells[index] as string;
      texts[field] = isMissing(cell) ? undefined : fromBytes(cell);
    }
    const read = readMeasurements(texts, options);
    if (!read.ok) {
      const [first] = read.error;
      if (first) countMarked(tally, entryReason(first));
      const notes = read.error.map((issue) => describeEntryIssue(issue));
      cells.push("", "", "", "", writeNotes([...shapeNote, ...notes]));
      return;
    }
    const { measurements, notices } = read.value;
    const estimate = estimateWeight(measurements, modelOption);
    if (!estimate.ok) {
      const { error } = estimate;
      countMarked(tally, bodyReason(error));
      const notes = [
        ...shapeNote,
        ...notices.map((notice) => describeEntryNotice(notice)),
        describeBodyIssue(error),
      ];
      cells.push("", "", "", "", writeNotes(notes));
      return;
    }
    const { totalKg, low95Kg, high95Kg, lengthCm, warnings } = estimate.value;
    const { sex, ageMonths } = measurements;
    const ideal = lengthCm === undefined ? undefined : idealWeight({ lengthCm, sex, ageMonths });
    tally.served++;
    let notes = "";
    if (shapeNote.length + notices.length + warnings.length > 0 || ideal?.ok === false) {
      tally.noted++;
      notes = writeNotes([
        ...shapeNote,
        ...notices.map((notice: EntryNotice) => describeEntryNotice(notice)),
        ...warnings.map((warning) => describeBodyWarning(warning)),
        ...(ideal === undefined || ideal.ok ? [] : [describeBodyIssue(ideal.error)]),
      ]);
    }
    cells.push(
      writeKg(totalKg),
      writeKg(low95Kg),
      writeKg(high95Kg),
      ideal?.ok ? writeKg(ideal.value) : "",
      notes,
    );
  };
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

/**
 * Writes kg to 10 g, which is finer than anything known of an estimate. Putting two whole numbers together takes a fifth
 * of the time of writing a fraction, and there are four a row.
 */
function createKgWriter(mark: DecimalMark): (kg: number) => string {
  const decimals = Array.from({ length: 100 }, (_, i) =>
    String(i / 100).replace(/^0\.?/, i === 0 ? "" : mark),
  );
  return (kg) => {
    const hundredths = Math.round(kg * 100);
    return `${Math.floor(hundredths / 100)}${decimals[hundredths % 100]}`;
  };
}

/** Sentences in one cell; plain spaces and hyphens, as spreadsheets do not search for the others. */
function writeNotes(sentences: readonly string[]): string {
  return toBytes(sentences.join(" ").replaceAll("\u00a0", " ").replaceAll("\u2212", "-"));
}

/** "length missing", "arm circumference out of range". */
function bodyReason(issue: BodyIssue): string {
  const reason = issue.type.replace("measurement-", "").replaceAll("-", " ");
  return "measurement" in issue ? `${describeField(issue.measurement)} ${reason}` : reason;
}

/** "arm circumference not a number". */
function entryReason({ type, field }: EntryIssue): string {
  return `${describeField(field)} ${type.replaceAll("-", " ")}`;
}
