import { FRENCH_NUMBERS } from "../units/index.ts";
import { FRENCH } from "./french.ts";
import { FRENCH_DOSING } from "./french-dosing.ts";
import { FRENCH_LOOKUP } from "./french-lookup.ts";
import { FRENCH_SITE } from "./french-site.ts";
import type { Language } from "./language.ts";

/** French, machine-translated and reviewed by nobody: wherever it is shown, `unreviewed` is shown with it. */
export const FRENCH_LANGUAGE: Language = {
  tag: "fr",
  name: "Français",
  unreviewed: "Traduction automatique, non relue.",
  numbers: FRENCH_NUMBERS,
  messages: FRENCH,
  dosing: FRENCH_DOSING,
  lookup: FRENCH_LOOKUP,
  site: FRENCH_SITE,
};
