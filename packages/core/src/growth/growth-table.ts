/** A table file of `reference/`: published L, M, S rows, folded. */
export interface GrowthTable {
  readonly id: string;
  readonly sourceId: string;
  readonly acknowledgement: string;
  readonly index: TableIndex;
  readonly value: { readonly name: string; readonly unit: string };
  readonly adjustedBeyond3Sd: boolean;
  /** Age in days from which the rows hold standing height instead of lying length. */
  readonly standingFromDays?: number;
  readonly decimals: { readonly x: number; readonly L: number; readonly M: number; readonly S: number };
  readonly x: string;
  readonly m: FoldedColumns;
  readonly f: FoldedColumns;
}

/** What a table is looked up by: its first and last row. */
export interface TableIndex {
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
}

interface FoldedColumns {
  readonly L: string;
  readonly M: string;
  readonly S: string;
}

/** A table for one sex, unfolded to its published rows. */
export interface GrowthRows {
  readonly x: Float64Array;
  readonly l: Float64Array;
  readonly m: Float64Array;
  readonly s: Float64Array;
}

export function unfoldTable(table: GrowthTable, sex: "m" | "f"): GrowthRows {
  const { decimals } = table;
  const columns = table[sex];
  return {
    x: unfoldColumn(table.x, decimals.x),
    l: unfoldColumn(columns.L, decimals.L),
    m: unfoldColumn(columns.M, decimals.M),
    s: unfoldColumn(columns.S, decimals.S),
  };
}

/** The medians alone, row by row: what needs no more starts sooner. */
export function unfoldMedians(table: GrowthTable, sex: "m" | "f"): Float64Array {
  return unfoldColumn(table[sex].M, table.decimals.M);
}

/**
 * Numbers from text: the first, the first difference, then second differences, in units of the last decimal,
 * each as a variable-length quantity (sign in the lowest bit, five bits to a character, lowest first, the
 * sixth bit set when more follow). Dividing whole numbers by a power of ten gives back the printed decimals
 * exactly.
 */
function unfoldColumn(text: string, decimals: number): Float64Array {
  const scale = 10 ** decimals;
  const column: number[] = [];
  let value = 0;
  let slope = 0;
  let quantity = 0;
  let weight = 1;
  for (let index = 0; index < text.length; index++) {
    const sextet = sextetOf(text.charCodeAt(index));
    quantity += (sextet % 32) * weight;
    weight *= 32;
    if (sextet >= 32) continue;
    const number = quantity % 2 === 1 ? -(quantity - 1) / 2 : quantity / 2;
    // The first number is the value itself; the second is a slope, as the first leaves none behind.
    slope = column.length === 0 ? 0 : slope + number;
    value += column.length === 0 ? number : slope;
    column.push(value / scale);
    quantity = 0;
    weight = 1;
  }
  return Float64Array.from(column);
}

/** Place of a character among A-Z, a-z, 0-9, + and /. */
function sextetOf(code: number): number {
  if (code >= 97) return code - 71;
  if (code >= 65) return code - 65;
  if (code >= 48) return code + 4;
  return code === 43 ? 62 : 63;
}
