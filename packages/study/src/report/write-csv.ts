import Papa from "papaparse";
import type { ReportTable } from "./block.ts";

/** A table of a report as CSV, numbers in full. A text that a spreadsheet would run as a formula gets an apostrophe. */
export function writeCsv({ data }: ReportTable): string {
  return `${Papa.unparse({ fields: [...data.columns], data: data.rows.map((row) => [...row]) }, { newline: "\n", escapeFormulae: /^[=+@\t\r]/ })}\n`;
}
