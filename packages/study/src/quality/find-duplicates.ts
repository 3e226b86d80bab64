import type { StudyTable } from "../table/study-table.ts";

/** Rows that repeat another row's measurements: entered twice, or copied. */
export interface Duplicates {
  /** Rows beyond the first of each set. */
  readonly rows: number;
  /** Row numbers in the file of the first sets found. */
  readonly first: readonly (readonly number[])[];
}

const SHOWN = 8;

/** Rows equal in every one of these columns; rows that lack more than `mayLack` of them are not compared. */
export function findDuplicates(table: StudyTable, names: readonly string[]): Duplicates {
  const columns = names.flatMap((name) => table.numbers.get(name) ?? table.words.get(name)?.codes ?? []);
  if (columns.length < 3) return { rows: 0, first: [] };
  const keys = new Float64Array(table.rows);
  for (let row = 0; row < table.rows; row++) keys[row] = keyOf(columns, row);
  const sorted = Float64Array.from(keys).sort();
  const repeated = new Set<number>();
  for (let i = 1; i < sorted.length; i++) if (sorted[i] === sorted[i - 1]) repeated.add(sorted[i] as number);
  const sets = new Map<number, number[]>();
  for (let row = 0; row < table.rows; row++) {
    const key = keys[row] as number;
    if (repeated.has(key)) sets.set(key, [...(sets.get(key) ?? []).slice(0, SHOWN), row]);
  }
  let rows = 0;
  const counts = new Map<number, number>();
  for (const key of keys) if (repeated.has(key)) counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const count of counts.values()) rows += count - 1;
  const first = [...sets.values()]
    .slice(0, SHOWN)
    .map((set) => set.map((row) => table.rowNumbers[row] as number));
  return { rows, first };
}

/** A number of 53 bits from the values of a row; NaN (never equal) when it lacks any of them. */
function keyOf(columns: readonly (Float64Array | Int32Array)[], row: number): number {
  let [high, low] = [0x9e3779b9, 0x85ebca6b];
  for (const column of columns) {
    const value = column[row] as number;
    if (Number.isNaN(value) || (column instanceof Int32Array && value < 0)) return Number.NaN;
    const whole = Math.round(value * 1e4);
    high = Math.imul(high ^ whole, 0x01000193) ^ (high >>> 15);
    low = Math.imul(low ^ Math.floor(whole / 65536) ^ (whole << 7), 0x5bd1e995) ^ (low >>> 13);
  }
  return (high >>> 0) * 2 ** 21 + (low >>> 11);
}
