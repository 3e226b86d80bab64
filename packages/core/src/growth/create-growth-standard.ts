import type { GrowthStandard, Sex } from "./growth-standard.ts";
import { type GrowthRows, type GrowthTable, type TableIndex, unfoldTable } from "./growth-table.ts";
import type { Lms } from "./lms.ts";
import { requireSex } from "./require.ts";

/** A part of a table that was published as a table of its own, under another index. */
interface TableWindow {
  readonly id: string;
  readonly index: TableIndex;
  /** What is added to this index to get that of the table. */
  readonly shift: number;
}

/**
 * A growth standard from a table file, or from a window of one. `index` and `value` are the unit factories
 * of what it is looked up by and of what it is about. The table is unfolded when it is first asked.
 */
export function createGrowthStandard<Index extends number, Value extends number>({
  table,
  index,
  value,
  window = { id: table.id, index: table.index, shift: 0 },
}: {
  readonly table: GrowthTable;
  readonly index: (value: number) => Index;
  readonly value: (value: number) => Value;
  readonly window?: TableWindow;
}): GrowthStandard<Index, Value> {
  const rowsBySex: { m?: GrowthRows; f?: GrowthRows } = {};
  const rowsOf = (sex: Sex): GrowthRows => {
    rowsBySex[sex] ??= unfoldTable(table, sex);
    return rowsBySex[sex];
  };
  const { low, high } = window.index;
  return {
    id: window.id,
    sourceIds: [table.sourceId],
    acknowledgement: table.acknowledgement,
    index: { ...window.index, low: index(low), high: index(high) },
    value: table.value,
    adjustedBeyond3Sd: table.adjustedBeyond3Sd,
    asValue: value,
    lms: ({ sex, at }) => {
      requireSex(`look up ${window.id}`, sex);
      if (!(at >= low && at <= high)) {
        throw new RangeError(
          `Cannot look up ${window.id} as at must be in [${low}, ${high}]: current value is ${at}`,
        );
      }
      return interpolate(rowsOf(sex), tidy(at + window.shift), table.standingFromDays);
    },
  };
}

/** Takes binary noise off a sum such as 84.3 + 0.7, so that a row is hit where a row is meant. */
function tidy(x: number): number {
  return Math.round(x * 1e9) / 1e9;
}

function interpolate({ x, l, m, s }: GrowthRows, at: number, standingFromDays = Number.NaN): Lms {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((x[middle] as number) <= at) low = middle;
    else high = middle;
  }
  const below = x[low] as number;
  const above = x[high] as number;
  let share = Math.min(1, Math.max(0, (at - below) / (above - below)));
  // Length and height do not mix: WHO's software rounds the age to whole days before it chooses between them.
  if (above === standingFromDays) share = Math.floor(at + 0.5) < standingFromDays ? 0 : 1;
  const between = (column: Float64Array): number => {
    const first = column[low] as number;
    return first + share * ((column[high] as number) - first);
  };
  return { l: between(l), m: between(m), s: between(s) };
}
