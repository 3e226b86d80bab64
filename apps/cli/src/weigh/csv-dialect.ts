import type { DecimalMark } from "@steelyard/core/entry";

export interface CsvDialect {
  readonly hasByteOrderMark: boolean;
  readonly delimiter: "," | ";" | "\t";
  readonly lineEnd: "\n" | "\r\n" | "\r";
  /** The decimal mark of the numbers: a comma only where commas do not part the cells. */
  readonly decimalMark: DecimalMark;
}

const BYTE_ORDER_MARK = "\u00ef\u00bb\u00bf";

/** What the beginning of a file tells of how it is written: the delimiter that its header has most of. */
export function detectDialect(head: string): CsvDialect {
  const hasByteOrderMark = head.startsWith(BYTE_ORDER_MARK);
  const text = hasByteOrderMark ? head.slice(BYTE_ORDER_MARK.length) : head;
  const lineEnd = /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";
  const header = text.split(lineEnd, 1)[0]?.replaceAll(/"[^"]*"/g, "") ?? "";
  const count = (mark: string): number => header.split(mark).length - 1;
  const delimiter = ([",", ";", "\t"] as const).reduce((best, mark) =>
    count(mark) > count(best) ? mark : best,
  );
  return {
    hasByteOrderMark,
    delimiter,
    lineEnd: lineEnd as CsvDialect["lineEnd"],
    decimalMark: delimiter === "," ? "." : detectDecimalMark(text, delimiter),
  };
}

/** Semicolons go with decimal commas and tabs with points, unless the first rows show otherwise. */
function detectDecimalMark(text: string, delimiter: ";" | "\t"): DecimalMark {
  const cell = (mark: string): RegExp =>
    new RegExp(`(?:^|[${delimiter}"])\\d+${mark}\\d+(?:["${delimiter}]|$)`, "m");
  const commas = cell(",").test(text);
  const points = cell("\\.").test(text);
  if (commas !== points) return commas ? "," : ".";
  return delimiter === ";" ? "," : ".";
}
