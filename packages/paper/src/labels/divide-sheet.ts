import type { Box, Point } from "../drawing/item.ts";
import { proofRulerLengthMm } from "../frame/proof-ruler.ts";
import type { LabelSheet } from "./label-sheet.ts";

/** What each part of a label sheet is for. */
export interface DividedSheet {
  /** The labels for doses, inside their white edge, in the order they are filled. */
  readonly doses: readonly Box[];
  readonly proof: {
    /** The labels at the foot, all but the last column, as one box: ruler across, imprint, code. */
    readonly foot: Box;
    /** Where the ruler along the page has its zero. */
    readonly alongFrom: Point;
  };
}

/** As high as imprint and cautions over a ruler need to be, mm: a row of common labels, two of low ones. */
const footMm = 36;

/** White inside the edge of a label that printer and cutter may take, mm. */
const edgeMm = 2.5;

/** Gives the labels of the foot, and as many of the last column as the ruler along the page is high, to what proves the sheet. */
export function divideSheet(sheet: LabelSheet): DividedSheet {
  const { columns, rows, labelWidthMm, labelHeightMm } = sheet;
  const rulerRows = Math.ceil((proofRulerLengthMm + 2 * edgeMm) / labelHeightMm);
  const footRows = Math.ceil(footMm / labelHeightMm);
  const doses: Box[] = [];
  for (let row = 0; row < rows - footRows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      if (column < columns - 1 || row < rows - rulerRows) doses.push(insideOf(sheet, column, row));
    }
  }
  const first = insideOf(sheet, 0, rows - footRows);
  const beforeLast = insideOf(sheet, columns - 2, rows - 1);
  const last = insideOf(sheet, columns - 1, rows - 1);
  const widthMm = beforeLast.xMm + beforeLast.widthMm - first.xMm;
  return {
    doses,
    proof: {
      foot: { ...first, widthMm, heightMm: last.yMm + last.heightMm - first.yMm },
      alongFrom: [last.xMm + (labelWidthMm - 2 * edgeMm) / 2, last.yMm + last.heightMm],
    },
  };
}

function insideOf(sheet: LabelSheet, column: number, row: number): Box {
  const { labelWidthMm, labelHeightMm, leftMm, topMm, stepMm } = sheet;
  return {
    xMm: leftMm + column * stepMm + edgeMm,
    yMm: topMm + row * labelHeightMm + edgeMm,
    widthMm: labelWidthMm - 2 * edgeMm,
    heightMm: labelHeightMm - 2 * edgeMm,
  };
}
