import { err, ok, type Result } from "@steelyard/core/result";

/** A sheet of labels: how many, how large, and where the first one begins; mm. */
export interface LabelSheet {
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  readonly leftMm: number;
  readonly topMm: number;
  /** From the left edge of a label to that of the next. */
  readonly stepMm: number;
}

const inchMm = 25.4;

/** Sheets that stationers sell everywhere, by the size of a label (common practice). */
export const labelSheets: readonly LabelSheet[] = [
  {
    id: "70x37",
    widthMm: 210,
    heightMm: 297,
    columns: 3,
    rows: 8,
    labelWidthMm: 70,
    labelHeightMm: 37,
    leftMm: 0,
    topMm: 0.5,
    stepMm: 70,
  },
  {
    id: "63.5x38.1",
    widthMm: 210,
    heightMm: 297,
    columns: 3,
    rows: 7,
    labelWidthMm: 63.5,
    labelHeightMm: 38.1,
    leftMm: 7.25,
    topMm: 15.15,
    stepMm: 66,
  },
  {
    id: "2.625x1in",
    widthMm: 8.5 * inchMm,
    heightMm: 11 * inchMm,
    columns: 3,
    rows: 10,
    labelWidthMm: 2.625 * inchMm,
    labelHeightMm: inchMm,
    leftMm: 0.1875 * inchMm,
    topMm: 0.5 * inchMm,
    stepMm: 2.75 * inchMm,
  },
];

export interface UnknownLabelSheet {
  readonly type: "unknown-label-sheet";
  readonly sheet: string;
  readonly known: readonly string[];
}

/**
 * The label sheet of an id such as "70x37", or which there are.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { labelSheetOf } from "@steelyard/paper";
 *
 * const sheet = labelSheetOf("70x37");
 * assert.ok(sheet.ok && sheet.value.columns * sheet.value.rows === 24);
 * assert.equal(labelSheetOf("1x1").ok, false);
 * ```
 */
export function labelSheetOf(id: string): Result<LabelSheet, UnknownLabelSheet> {
  const found = labelSheets.find((own) => own.id === id.toLowerCase());
  return found === undefined
    ? err({ type: "unknown-label-sheet", sheet: id, known: labelSheets.map((own) => own.id) })
    : ok(found);
}
