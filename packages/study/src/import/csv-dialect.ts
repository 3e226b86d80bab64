import type { DecimalMark } from "@steelyard/core/entry";

export interface CsvDialect {
  readonly delimiter: "," | ";" | "\t" | "|";
  readonly lineEnd: "\n" | "\r\n" | "\r";
  readonly decimalMark: DecimalMark;
}

/** Lines that are looked at. */
const LOOKED_AT = 50;

/**
 * How a text file is written, from its first lines: the delimiter that parts most lines into as many cells as the header, and a decimal
 * comma where commas do not part the cells and numbers have them.
 */
export function detectDialect(head: string): CsvDialect {
  const lineEnd = (/\r\n|\n|\r/.exec(head)?.[0] ?? "\n") as CsvDialect["lineEnd"];
  const lines = head
    .split(lineEnd)
    .slice(0, LOOKED_AT)
    .map((line) => line.replaceAll(/"[^"]*"/g, ""))
    .filter((line) => line.trim() !== "");
  const [header = "", ...rows] = lines;
  const cells = (line: string, mark: string): number => line.split(mark).length;
  const score = (mark: string): number => {
    const width = cells(header, mark);
    if (width === 1) return 0;
    const agreeing = rows.filter((line) => cells(line, mark) === width).length;
    return (1 + agreeing) / (1 + rows.length) + Math.min(width, 100) / 1000;
  };
  const delimiter = ([",", ";", "\t", "|"] as const).reduce((best, mark) =>
    score(mark) > score(best) ? mark : best,
  );
  return {
    delimiter,
    lineEnd,
    decimalMark: delimiter === "," ? decimalOfQuoted(head) : decimalOf(rows, delimiter),
  };
}

function decimalOf(rows: readonly string[], delimiter: string): DecimalMark {
  const cells = rows.flatMap((line) => line.split(delimiter).map((cell) => cell.trim()));
  const commas = cells.filter((cell) => /^[+-]?\d+,\d+$/.test(cell)).length;
  const points = cells.filter((cell) => /^[+-]?\d+\.\d+$/.test(cell)).length;
  return commas > points ? "," : ".";
}

/** Commas part the cells: a decimal comma can only stand inside quotes. */
function decimalOfQuoted(head: string): DecimalMark {
  const commas = (head.match(/"[+-]?\d+,\d+"/g) ?? []).length;
  const points = (head.match(/\d\.\d/g) ?? []).length;
  return commas > points ? "," : ".";
}
