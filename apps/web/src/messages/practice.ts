import { whenSpoken } from "./language.ts";
import { practiceEn } from "./practice.en.ts";
import type { Words } from "./words.ts";

/** The words of the Practice screen, in the language of the page. */
export let practice: Words<typeof practiceEn> = practiceEn;

whenSpoken((translation) => {
  practice = translation?.practice ?? practiceEn;
});
