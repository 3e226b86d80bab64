import {
  compareFormularies,
  DOSE_TABLE_COLUMNS,
  describeDifference,
  doseTable,
  readDoseTable,
  writeFormulary,
} from "@steelyard/formulary/ownership";
import { CsvError, parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { wrap } from "../wrap.ts";
import { faultyFile, loadFormulary, loadText } from "./load-formulary.ts";
import { writeResult } from "./write-result.ts";

/** `steelyard formulary csv [file] -o doses.csv`, and back with `--from doses.csv`. */
export async function csvFile(
  path: string,
  { from, output }: { readonly from?: string; readonly output: string },
): Promise<void> {
  const { formulary } = await loadFormulary(path);
  if (from === undefined) {
    await writeResult(
      output,
      stringify(doseTable(formulary), { header: true, columns: [...DOSE_TABLE_COLUMNS] }),
    );
    return;
  }
  const read = readDoseTable(formulary, parseTable(from, await loadText(from)));
  if (!read.ok) {
    throw faultyFile(
      from,
      read.error.map(({ row, column, message }) => ({
        place: `row ${row}${column === undefined ? "" : `, column ${column}`}`,
        message,
      })),
    );
  }
  await writeResult(output, writeFormulary(read.value));
  const differences = compareFormularies(formulary, read.value);
  const lines =
    differences.length === 0
      ? ["Nothing was changed."]
      : differences.map((difference) => `* ${describeDifference(difference)}`);
  process.stderr.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
}

/** Rows of text; spreadsheets that part cells by semicolons are understood as well. */
function parseTable(path: string, text: string): Record<string, string>[] {
  const header = text.slice(0, text.indexOf("\n"));
  const delimiter = header.includes(";") && !header.includes(",") ? ";" : ",";
  try {
    return parse(text, { columns: true, bom: true, delimiter, skip_empty_lines: true });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new CommandFailure(
      EXIT.notServed,
      `${path} is no table: ${error.message}. Nothing of it was taken.`,
    );
  }
}
