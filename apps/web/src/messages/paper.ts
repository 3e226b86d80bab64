import { whenSpoken } from "./language.ts";
import { paperEn } from "./paper.en.ts";
import type { Words } from "./words.ts";

/** The words of the Paper screen, in the language of the page. */
export let paperMessages: Words<typeof paperEn> = paperEn;

whenSpoken((translation) => {
  paperMessages = translation?.paper ?? paperEn;
});
