/** Words as codes: `codes[row]` is the place in `levels`, -1 where nothing is known. */
export interface WordColumn {
  readonly codes: Int32Array;
  readonly levels: readonly string[];
}

/**
 * The children of a study, column by column, all of the same length `rows`. A missing number is NaN: columns are for functions
 * that know it, and no NaN leaves those.
 */
export interface StudyTable {
  readonly rows: number;
  /** Measurements by field (`weightKg`, `lengthCm`, ...) and estimates by the name of their column, in kg. */
  readonly numbers: ReadonlyMap<string, Float64Array>;
  readonly words: ReadonlyMap<string, WordColumn>;
  /** Number of the row in the file, the first after the header being 1. */
  readonly rowNumbers: Int32Array;
}

/**
 * The rows for which `keep` holds, in their order.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { selectRows } from "@steelyard/study/table";
 *
 * const table = { rows: 2, numbers: new Map([["weightKg", Float64Array.of(28, 30)]]), words: new Map(), rowNumbers: Int32Array.of(1, 2) };
 * assert.deepEqual(selectRows(table, (row) => row === 1).numbers.get("weightKg"), Float64Array.of(30));
 * ```
 */
export function selectRows(table: StudyTable, keep: (row: number) => boolean): StudyTable {
  const kept = new Int32Array(table.rows);
  let rows = 0;
  for (let row = 0; row < table.rows; row++) if (keep(row)) kept[rows++] = row;
  if (rows === table.rows) return table;
  const pick = <T extends Float64Array | Int32Array>(from: T, to: T): T => {
    for (let i = 0; i < rows; i++) to[i] = from[kept[i] as number] as number;
    return to;
  };
  return {
    rows,
    numbers: new Map(
      Array.from(table.numbers, ([name, values]) => [name, pick(values, new Float64Array(rows))]),
    ),
    words: new Map(
      Array.from(table.words, ([name, { codes, levels }]) => [
        name,
        { codes: pick(codes, new Int32Array(rows)), levels },
      ]),
    ),
    rowNumbers: pick(table.rowNumbers, new Int32Array(rows)),
  };
}

/**
 * The word of a row, undefined where nothing is known.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { wordAt } from "@steelyard/study/table";
 *
 * const sex = { codes: Int32Array.of(1, -1), levels: ["m", "f"] };
 * assert.deepEqual([wordAt(sex, 0), wordAt(sex, 1)], ["f", undefined]);
 * ```
 */
export function wordAt(column: WordColumn | undefined, row: number): string | undefined {
  return column?.levels[column.codes[row] ?? -1];
}
