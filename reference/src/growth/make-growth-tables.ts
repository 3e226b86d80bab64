import { chooseDecimals } from "./choose-decimals.ts";
import { foldColumn } from "./fold-column.ts";
import type { LmsFile, PrintedRow } from "./read-lms-file.ts";
import { type TablePlan, tablePlans } from "./table-plan.ts";

/** File name and text of every table; the same bytes for the same figures. */
export function makeGrowthTables(file: LmsFile): ReadonlyMap<string, string> {
  return new Map(tablePlans.map((plan) => [`${plan.id}.json`, makeGrowthTable(plan, file)]));
}

function makeGrowthTable({ parts, ...about }: TablePlan, file: LmsFile): string {
  const boys = takeRows(about.id, parts, file, "M");
  const girls = takeRows(about.id, parts, file, "F");
  const x = boys.map((row) => row.x).join();
  if (x !== girls.map((row) => row.x).join()) {
    throw new Error(`Cannot make ${about.id} as boys and girls have different rows`);
  }
  const decimals = { x: 1, ...chooseDecimals([...boys, ...girls]) };
  const fold = (rows: readonly PrintedRow[], name: "x" | "L" | "M" | "S") =>
    foldColumn(rows.map((row) => Math.round(Number(row[name]) * 10 ** decimals[name])));
  const columns = (rows: readonly PrintedRow[]) => ({
    L: fold(rows, "L"),
    M: fold(rows, "M"),
    S: fold(rows, "S"),
  });
  const ends = { low: Number(boys.at(0)?.x), high: Number(boys.at(-1)?.x) };
  const index = { ...about.index, ...ends };
  const table = { ...about, index, decimals, x: fold(boys, "x"), m: columns(boys), f: columns(girls) };
  return `${JSON.stringify(table, null, 2)}\n`;
}

/** The rows of all parts in order of x; where two parts give the same x they must agree. */
function takeRows(
  id: string,
  parts: TablePlan["parts"],
  file: LmsFile,
  sex: "M" | "F",
): readonly PrintedRow[] {
  const rows = new Map<number, PrintedRow>();
  for (const part of parts) {
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY, shift = 0 } = part;
    const found = file.get(`${part.source} ${part.indicator} ${sex}`);
    if (!found)
      throw new Error(`Cannot make ${id} as the file has no ${part.source} ${part.indicator} ${sex}`);
    for (const row of found) {
      if (Number(row.x) < low || Number(row.x) > high) continue;
      const x = Math.round((Number(row.x) + shift) * 10) / 10;
      const known = rows.get(x);
      if (known && (known.L !== row.L || known.M !== row.M || known.S !== row.S)) {
        throw new Error(`Cannot make ${id} as two tables disagree at ${x}`);
      }
      rows.set(x, { ...row, x: String(x) });
    }
  }
  return [...rows].sort(([a], [b]) => a - b).map(([, row]) => row);
}
