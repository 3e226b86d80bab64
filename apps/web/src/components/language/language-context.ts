import { createContext } from "preact";
import type { Translation } from "../../messages/translation.ts";

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
