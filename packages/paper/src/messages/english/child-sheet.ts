import type { ChildSheetMessages } from "../child-sheet-messages.ts";

export const ENGLISH_CHILD_SHEET: ChildSheetMessages = {
  title: "Child sheet",
  subtitle: "For this child alone; away with it once the child has been weighed",
  name: "Name or number",
  weighed: "Scale weight, kg, and time",
  total: "total weight",
  ideal: "ideal weight",
  range: ({ low, high }) => `95 % range ${low} to ${high}`,
  given: "given at",
  by: "by",
  checked: "checked",
  workingTitle: "Child sheet, working",
  workingSubtitle: "How each dose was worked out, to be checked by a second person",
  equipmentTitle: "Equipment",
  signsTitle: "Normal signs",
};
