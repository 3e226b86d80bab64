import { whenSpoken } from "./language.ts";
import { techniqueEn } from "./technique.en.ts";
import type { Words } from "./words.ts";

/** How measurements are taken, in the language of the page. */
export let techniqueMessages: Words<typeof techniqueEn> = techniqueEn;

whenSpoken((translation) => {
  techniqueMessages = translation?.technique ?? techniqueEn;
});
