import {
  type BodyModel,
  estimateWeight,
  idealWeight,
  type Measurements,
  recogniseSlips,
  type SiteProfile,
  uncalibratedSite,
} from "@steelyard/core/body";
import type { DecimalMark, EntryNotice } from "@steelyard/core/entry";
import {
  describeBodyIssue,
  describeBodyWarning,
  describeEntryIssue,
  describeEntryNotice,
  describeSlip,
} from "@steelyard/core/wording";
import { toBytes } from "./bytes.ts";
import type { CsvDialect } from "./csv-dialect.ts";
import { bodyReason, createRowReader, entryReason } from "./row-reader.ts";
import { countMarked, type Tally } from "./tally.ts";
import type { ColumnPlan } from "./weigh-columns.ts";

/** Adds weight and notes to the cells of one row, in place, and counts it. */
export type RowWeigher = (cells: string[]) => void;

/** Makes the function that weighs the rows of one file. */
export function createRowWeigher({
  plan,
  dialect,
  tally,
  model,
  site = uncalibratedSite,
}: {
  plan: ColumnPlan;
  dialect: CsvDialect;
  tally: Tally;
  model: BodyModel;
  site?: SiteProfile | undefined;
}): RowWeigher {
  const readRow = createRowReader({ plan, dialect });
  const estimateOptions = { model, site };
  /** The likeliest slip that has a correction to propose; looked for in rows that are in doubt, since it costs as much as the weight. */
  const likelySlip = (measurements: Measurements): readonly string[] => {
    const [slip] = recogniseSlips(measurements, estimateOptions);
    return slip === undefined || slip.type === "outlier" ? [] : [describeSlip(slip)];
  };
  const writeKg = createKgWriter(dialect.decimalMark);

  return (cells) => {
    tally.rows++;
    const { shapeNote, read } = readRow(cells);
    if (!read.ok) {
      const [first] = read.error;
      if (first) countMarked(tally, entryReason(first));
      const notes = read.error.map((issue) => describeEntryIssue(issue));
      cells.push("", "", "", "", writeNotes([...shapeNote, ...notes]));
      return;
    }
    const { measurements, notices } = read.value;
    const estimate = estimateWeight(measurements, estimateOptions);
    if (!estimate.ok) {
      const { error } = estimate;
      countMarked(tally, bodyReason(error));
      const notes = [
        ...shapeNote,
        ...notices.map((notice) => describeEntryNotice(notice)),
        describeBodyIssue(error),
        // A refusal that proposes another unit has said what the recogniser would say.
        ...("proposal" in error && error.proposal !== undefined ? [] : likelySlip(measurements)),
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
        ...(warnings.some(({ type }) => doubts.has(type)) ? likelySlip(measurements) : []),
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

/** What a slip of the tape or the pen shows itself by. */
const doubts: ReadonlySet<string> = new Set(["measurement-extrapolated", "measurement-conflict"]);

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
