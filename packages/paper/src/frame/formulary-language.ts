import type { SheetContext } from "./sheet-context.ts";

/** The language of the draft formulary; a site's own is the site's matter. */
const formularyTag = "en";

/** How a group of the formulary's own words, which are never translated, is marked on a page in another language. */
export function formularyLanguage({ messages }: Pick<SheetContext, "messages">): {
  readonly language?: string;
} {
  return messages.language.tag === formularyTag ? {} : { language: formularyTag };
}
