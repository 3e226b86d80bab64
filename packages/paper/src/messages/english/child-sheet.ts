import type { ChildSheetMessages, SheetNumber } from "../child-sheet-messages.ts";

export const ENGLISH_CHILD_SHEET: ChildSheetMessages = {
  title: "Child sheet",
  name: "Name or number",
  weighed: "Scale weight, kg, and time",
  total: "total weight",
  ideal: "ideal weight",
  range: ({ low, high }) => `95 % range ${low} to ${high}`,
  given: "given at",
  by: "by",
  checked: "checked",
  workingTitle: "Child sheet, working",
  front: (sheet) =>
    `${sideOf("Front", sheet)}: for this child alone; away with it once the child has been weighed`,
  back: (sheet) => `${sideOf("Back", sheet)}: how each dose was worked out, to be checked by a second person`,
  furtherTitle: "Further doses",
  notesTitle: "Child sheet, further doses",
  notes: ({ sheet, sheets }) =>
    `Sheet ${sheet} of ${sheets}: for this child alone; lines for doses that are not on the sheets`,
};

function sideOf(side: string, { sheet, sheets }: SheetNumber): string {
  return sheets === 1 ? side : `${side} of sheet ${sheet} of ${sheets}`;
}
