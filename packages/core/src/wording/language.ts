import type { NumberStyle } from "../units/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import type { SiteCatalogue } from "./english-site.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";

/**
 * One language: how it writes numbers, and a sentence for everything that can be said.
 *
 * It is handed to the functions that need it, part by part: `describeWorking(step, language.dosing)`,
 * `formatNumber(value, language.numbers)`. Without it they speak English.
 */
export interface Language {
  /** BCP 47, for the `lang` attribute. */
  readonly tag: string;
  /** In the language itself. */
  readonly name: string;
  /** Who answers for the words: the sentence to show with them, absent where a person has reviewed them. */
  readonly unreviewed?: string;
  readonly numbers: NumberStyle;
  readonly messages: MessageCatalogue;
  readonly dosing: DosingCatalogue;
  readonly lookup: LookupCatalogue;
  readonly site: SiteCatalogue;
}
