import { createContext } from "preact";

/** The languages of the page, by their BCP 47 tags, each under its own name. */
export const languageNames = { en: "English", fr: "Français" } as const;
export type LanguageTag = keyof typeof languageNames;

export const languageTags = Object.keys(languageNames) as readonly LanguageTag[];

export interface LanguageChoice {
  readonly tag: LanguageTag;
  /** The language that was asked for and could not be loaded. */
  readonly missing: LanguageTag | undefined;
  readonly choose: (tag: LanguageTag) => void;
}

/** Which language the page has, and how to ask for another one. */
export const LanguageContext = createContext<LanguageChoice>({
  tag: "en",
  missing: undefined,
  choose: () => undefined,
});
