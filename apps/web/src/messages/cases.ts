import { casesEn } from "./cases.en.ts";
import { whenSpoken } from "./language.ts";
import type { Words } from "./words.ts";

/** The words of the clock, the log and the casebook, in the language of the page. */
export let cases: Words<typeof casesEn> = casesEn;

whenSpoken((translation) => {
  cases = translation?.cases ?? casesEn;
});
