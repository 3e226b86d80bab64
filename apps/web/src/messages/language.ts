import type { Language } from "@steelyard/core/wording";
import type { Translation } from "./translation.ts";

/**
 * The language of the page for the functions of the library; undefined is English, which they speak by themselves.
 *
 * A page has one language at a time, like it has one address, and every sentence in it is written in that: so it is
 * a live binding of this module, and not a value that hundreds of calls hand on. Only `speak` changes it, and
 * whoever calls that renders the whole page anew.
 */
export let language: Language | undefined;

let spoken: Translation | undefined;
const areas: ((translation: Translation | undefined) => void)[] = [];

/** Gives an area its words now and whenever the language changes; English where nothing is handed over. */
export function whenSpoken(take: (translation: Translation | undefined) => void): void {
  areas.push(take);
  take(spoken);
}

/** Changes the language of every area. */
export function speak(translation: Translation | undefined): void {
  spoken = translation;
  language = translation?.language;
  for (const take of areas) take(translation);
}
