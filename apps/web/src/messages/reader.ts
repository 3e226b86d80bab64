import { whenSpoken } from "./language.ts";
import { readerEn } from "./reader.en.ts";
import type { Words } from "./words.ts";

/** The words of the second reader, in the language of the page. */
export let readerMessages: Words<typeof readerEn> = readerEn;

whenSpoken((translation) => {
  readerMessages = translation?.reader ?? readerEn;
});
