import { whenSpoken } from "./language.ts";
import { studyEn } from "./study.en.ts";
import type { Words } from "./words.ts";

/** The words of the Study screen, in the language of the page. */
export let study: Words<typeof studyEn> = studyEn;

whenSpoken((translation) => {
  study = translation?.study ?? studyEn;
});
