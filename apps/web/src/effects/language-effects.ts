import { type LanguageTag, languageTags } from "../components/language/language-context.ts";
import type { Translation } from "../messages/translation.ts";

/** What the language of the page does to the world around it. */
export interface LanguageEffects {
  /** The language chosen on this device, or else the first of the browser's that there is. */
  readonly find: () => LanguageTag;
  readonly keep: (tag: LanguageTag) => void;
  /** The words of a language; undefined is English, which is there already. Fails where they cannot be had. */
  readonly load: (tag: LanguageTag) => Promise<Translation | undefined>;
  /** Tells the browser, for its speech, hyphens and quotation marks. */
  readonly show: (tag: LanguageTag) => void;
}

const key = "steelyard.language";

export const languageEffects: LanguageEffects = {
  find: () => {
    const kept = keptTag();
    const wanted = [...(kept === null ? [] : [kept]), ...navigator.languages].map((tag) => tag.slice(0, 2));
    return wanted.map(tagOf).find((tag) => tag !== undefined) ?? "en";
  },
  keep: (tag) => {
    try {
      localStorage.setItem(key, tag);
    } catch {
      // Storage is refused or full; the choice holds until the page is left.
    }
  },
  load: (tag) =>
    tag === "en" ? Promise.resolve(undefined) : import("../messages/french.ts").then(({ french }) => french),
  show: (tag) => {
    document.documentElement.lang = tag;
  },
};

function keptTag(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function tagOf(text: string): LanguageTag | undefined {
  return languageTags.find((tag) => tag === text);
}
