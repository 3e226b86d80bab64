import { whenSpoken } from "./language.ts";
import { siteEn } from "./site.en.ts";
import type { Words } from "./words.ts";

/** The words of the screen of the site, in the language of the page. */
export let siteMessages: Words<typeof siteEn> = siteEn;

whenSpoken((translation) => {
  siteMessages = translation?.site ?? siteEn;
});
