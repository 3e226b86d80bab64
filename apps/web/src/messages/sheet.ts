import { whenSpoken } from "./language.ts";
import { sheetEn } from "./sheet.en.ts";
import type { Words } from "./words.ts";

/** The words of the lines of the sheet, in the language of the page. */
export let sheetMessages: Words<typeof sheetEn> = sheetEn;

whenSpoken((translation) => {
  sheetMessages = translation?.sheet ?? sheetEn;
});
