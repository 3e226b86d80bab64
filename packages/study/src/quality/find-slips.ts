import { recogniseSlips, type Slip } from "@steelyard/core/body";
import { kilograms } from "@steelyard/core/units";
import { childAt } from "../methods/child-at.ts";
import type { StudyTable } from "../table/study-table.ts";

/** A row whose numbers do not belong to one child, with the likeliest explanation. */
export interface RowSlip {
  /** Place in the table. */
  readonly at: number;
  /** Number in the file. */
  readonly row: number;
  readonly type: Slip["type"];
  readonly from?: string;
  readonly changes: Slip["changes"];
  readonly p: number;
}

export interface SlipSearch {
  /** Rows looked at: all, or every n-th of a file longer than the most. */
  readonly looked: number;
  readonly every: number;
  readonly slips: readonly RowSlip[];
}

/** Every row of a file up to this long is looked at; of a longer one every n-th. */
const MOST_ROWS = 20_000;

/**
 * Rows whose measurements and scale weight do not belong together by the body model: impossible and unlikely values, each with the slip
 * that explains it best. Nothing is changed and no row is left out of the comparison for it.
 */
export function findSlips(table: StudyTable): SlipSearch {
  const child = childAt(table, [
    "lengthCm",
    "armMm",
    "waistCm",
    "thighCm",
    "calfCm",
    "headCm",
    "sex",
    "ageMonths",
  ]);
  const weights = table.numbers.get("weightKg");
  const every = Math.max(1, Math.ceil(table.rows / MOST_ROWS));
  const slips: RowSlip[] = [];
  let looked = 0;
  for (let at = 0; at < table.rows; at += every) {
    looked++;
    const weight = weights?.[at] ?? Number.NaN;
    const [slip] = recogniseSlips({
      ...child(at),
      ...(Number.isNaN(weight) ? {} : { scaleKg: kilograms(weight) }),
    });
    if (slip === undefined) continue;
    const from = slip.type === "unit" ? { from: slip.from } : {};
    slips.push({
      at,
      row: table.rowNumbers[at] as number,
      type: slip.type,
      ...from,
      changes: slip.changes,
      p: slip.p,
    });
  }
  return { looked, every, slips };
}
