import { en } from "./en.ts";
import { whenSpoken } from "./language.ts";
import type { Words } from "./words.ts";

/** The words of the page itself, in its language. */
export let messages: Words<typeof en> = en;

whenSpoken((translation) => {
  messages = translation?.page ?? en;
});
