import {
  type LanguageEffects,
  type LanguageTag,
  languageTags,
} from "../components/language/language-context.ts";

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
