import Papa from "papaparse";
import type { CaseRecord } from "./fold-case.ts";
import {
  columns,
  estimateColumns,
  flagColumns,
  numberColumns,
  secondColumns,
  studyColumns,
  wordColumns,
} from "./study-columns.ts";

export { studyColumns };

type Row = Record<string, string | number>;

/** Milliseconds of a day in UTC. */
const dayMs = 24 * 60 * 60 * 1000;

/**
 * Cases as CSV for a study, one row each, in the order given; deleted cases and cases without a measurement are left out.
 *
 * Columns as `studyColumns`; full precision, a point for decimals, CRLF as RFC 4180. The day of the later scale weight
 * is written as whole days after the day (UTC) on which the case began.
 *
 * @source rfc-4180
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { studyColumns, writeStudyRows } from "@steelyard/records/case";
 *
 * assert.equal(writeStudyRows([]), `${studyColumns.join(",")}\r\n`);
 * ```
 */
export function writeStudyRows(records: readonly CaseRecord[]): string {
  const rows = records
    .filter(({ deletedAt, measurement }) => deletedAt === undefined && measurement !== undefined)
    .map(rowOf);
  const cells = rows.map((row) => studyColumns.map((column) => row[column] ?? ""));
  return `${Papa.unparse([[...studyColumns], ...cells], { newline: "\r\n", escapeFormulae: true })}\r\n`;
}

function rowOf({
  code,
  startedAt,
  measurement,
  estimate,
  secondReadings,
  laterWeight,
  versions,
}: CaseRecord): Row {
  const measured: Readonly<Record<string, unknown>> = measurement?.measurements ?? {};
  const estimated: Readonly<Record<string, unknown>> = { ...estimate?.estimate };
  const second: Readonly<Record<string, unknown>> = { ...secondReadings.at(-1) };
  const row: Row = {
    [columns.code]: code,
    [columns.software]: versions.software,
    [columns.model]: versions.model,
    [columns.formulary]: versions.formulary,
    [columns.formularySigned]: versions.formularySigned ? "yes" : "no",
    [columns.calibration]: versions.calibration ?? "",
    [columns.rests]: estimate?.estimate.rests.join(" ") ?? "",
  };
  const put = (names: Readonly<Record<string, string>>, values: Readonly<Record<string, unknown>>): void => {
    for (const [name, column] of Object.entries(names)) {
      const value = values[name];
      if (typeof value === "boolean") row[column] = value ? "yes" : "no";
      else if (typeof value === "number" || typeof value === "string") row[column] = value;
    }
  };
  put(numberColumns, measured);
  put(wordColumns, measured);
  put(flagColumns, measured);
  put({ scaleKg: columns.scaleAtOnceKg }, measured);
  put(estimateColumns, estimated);
  put(secondColumns, second);
  if (laterWeight !== undefined) {
    row[columns.weightKg] = laterWeight.kg;
    row[columns.weightDaysAfter] = daysBetween(startedAt.slice(0, 10), laterWeight.on);
  } else if (typeof measured.scaleKg === "number") {
    // Weighed at the bedside: the truth was there on the day.
    row[columns.weightKg] = measured.scaleKg;
    row[columns.weightDaysAfter] = 0;
  }
  return row;
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / dayMs);
}
