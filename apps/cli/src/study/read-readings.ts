import { readFile } from "node:fs/promises";
import { type OpenedFile, openStudyFile } from "@steelyard/study/import";
import { ENGLISH_REPORT } from "@steelyard/study/report";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

/** The cells of some columns, row by row, and the rows of the file that they stand in. */
export interface ReadingRows {
  readonly cells: readonly (readonly string[])[];
  readonly rowNumbers: readonly number[];
  readonly decimalMark: string;
}

/** Reads the columns named from a table of any kind that a study reads. */
export async function readReadings(
  path: string,
  { columns, sheet }: { readonly columns: readonly string[]; readonly sheet?: string | undefined },
): Promise<ReadingRows> {
  const bytes = await readFile(path).catch((error: unknown) => {
    throw fileFailure("read", path, error);
  });
  const opened = await openStudyFile(bytes, sheet === undefined ? {} : { sheet });
  if (!opened.ok)
    throw new CommandFailure(
      EXIT.notServed,
      `Cannot read ${path}: ${ENGLISH_REPORT.issue(opened.error)} Nothing was computed.`,
    );
  const places = columns.map((column) => placeOf(column, opened.value));
  const cells: string[][] = [];
  const rowNumbers: number[] = [];
  let row = 0;
  const read = opened.value.read((rows) => {
    for (const own of rows) {
      row++;
      if (own.every((cell) => cell.trim() === "")) continue;
      cells.push(places.map((place) => (own[place] ?? "").trim()));
      rowNumbers.push(row);
    }
    return true;
  });
  if (!read.ok)
    throw new CommandFailure(
      EXIT.notServed,
      `Cannot read ${path}: ${ENGLISH_REPORT.issue(read.error)} Nothing was computed.`,
    );
  return { cells, rowNumbers, decimalMark: opened.value.facts.decimalMark };
}

function placeOf(column: string, { header }: OpenedFile): number {
  const place = header.indexOf(column);
  if (place < 0)
    throw new CommandFailure(
      EXIT.notServed,
      `There is no column "${column}"; there are: ${header.slice(0, 30).join(", ")}. Nothing was computed.`,
    );
  return place;
}

/** Cells as numbers; rows with one that is none are left out and named. */
export function numbersOf({ cells, rowNumbers, decimalMark }: ReadingRows): {
  readonly readings: readonly (readonly number[])[];
  readonly leftOut: readonly number[];
} {
  const number = (cell: string): number => {
    const text = decimalMark === "," ? cell.replace(",", ".") : cell;
    return text === "" ? Number.NaN : Number(text);
  };
  const readings: number[][] = [];
  const leftOut: number[] = [];
  for (const [i, row] of cells.entries()) {
    const numbers = row.map(number);
    if (numbers.every(Number.isFinite)) readings.push(numbers);
    else leftOut.push(rowNumbers[i] as number);
  }
  return { readings, leftOut };
}
