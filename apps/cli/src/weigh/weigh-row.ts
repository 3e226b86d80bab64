import { type BodyModel, estimateWeight, idealWeight } from "@steelyard/core/body";
import { type EntryField, type EntryIssue, type EntryNotice, readMeasurements } from "@steelyard/core/entry";
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
  // One object for all rows: a million of them would be the larger part of the work.
  const texts: { [F in EntryField]?: string | undefined } = {};

  return (cells) => {
    tally.rows++;
    const shapeNote = mendWidth(cells, plan.width);
    for (const { field, index } of plan.columns) {
      const cell = cells[index] as string;
      texts[field] = MISSING.has(cell) ? undefined : fromBytes(cell);
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
      const of =
        error.type === "length-missing"
          ? "length missing"
          : `${describeField(error.measurement)} out of range`;
      countMarked(tally, of);
      const notes = [
        ...shapeNote,
        ...notices.map((notice) => describeEntryNotice(notice)),
        describeBodyIssue(error),
      ];
      cells.push("", "", "", "", writeNotes(notes));
      return;
    }
    const { totalKg, low95Kg, high95Kg, warnings } = estimate.value;
    const { lengthCm, sex, ageMonths } = measurements;
    const ideal = lengthCm === undefined ? undefined : idealWeight({ lengthCm, sex, ageMonths });
    tally.served++;
    let notes = "";
    if (shapeNote.length + notices.length + warnings.length > 0 || ideal?.ok !== true) {
      tally.noted++;
      notes = writeNotes([
        ...shapeNote,
        ...notices.map((notice: EntryNotice) => describeEntryNotice(notice)),
        ...warnings.map((warning) => describeBodyWarning(warning)),
        ...(ideal === undefined || ideal.ok ? [] : [describeBodyIssue(ideal.error)]),
      ]);
    }
    const mark = dialect.decimalMark;
    cells.push(
      writeKg(totalKg, mark),
      writeKg(low95Kg, mark),
      writeKg(high95Kg, mark),
      ideal?.ok ? writeKg(ideal.value, mark) : "",
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

/** To 10 g, which is finer than anything known of an estimate. */
function writeKg(kg: number, mark: "." | ","): string {
  const text = String(Math.round(kg * 100) / 100);
  return mark === "," ? text.replace(".", ",") : text;
}

/** Sentences in one cell; plain spaces and hyphens, as spreadsheets do not search for the others. */
function writeNotes(sentences: readonly string[]): string {
  return toBytes(sentences.join(" ").replaceAll("\u00a0", " ").replaceAll("\u2212", "-"));
}

/** "arm circumference not a number". */
function entryReason({ type, field }: EntryIssue): string {
  return `${describeField(field)} ${type.replaceAll("-", " ")}`;
}
