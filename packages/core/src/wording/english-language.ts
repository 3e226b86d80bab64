import { ENGLISH_NUMBERS } from "../units/index.ts";
import { ENGLISH } from "./english.ts";
import { ENGLISH_DOSING } from "./english-dosing.ts";
import { ENGLISH_LOOKUP } from "./english-lookup.ts";
import { ENGLISH_SITE } from "./english-site.ts";
import type { Language } from "./language.ts";

/** English, the language that the others are translated from. */
export const ENGLISH_LANGUAGE: Language = {
  tag: "en",
  name: "English",
  numbers: ENGLISH_NUMBERS,
  messages: ENGLISH,
  dosing: ENGLISH_DOSING,
  lookup: ENGLISH_LOOKUP,
  site: ENGLISH_SITE,
};
