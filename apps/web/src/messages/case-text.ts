import { type CaseTextMessages, ENGLISH_CASE_TEXT, FRENCH_CASE_TEXT } from "@steelyard/records/case";
import { whenSpoken } from "./language.ts";

/** The words of the log itself, in the language of the page. */
export let caseWords: CaseTextMessages = ENGLISH_CASE_TEXT;

whenSpoken((translation) => {
  caseWords = translation?.language.tag.startsWith("fr") ? FRENCH_CASE_TEXT : ENGLISH_CASE_TEXT;
});
