import type { SheetContext } from "./sheet-context.ts";

/** The language of a formulary that does not say its own, as the draft. */
const draftTag = "en";

/** In which language the words of the formulary are. */
export function formularyTag({ imprint }: Pick<SheetContext, "imprint">): string {
  return imprint.formulary?.language ?? draftTag;
}

/** How a group of the formulary's own words, which are never translated, is marked on a page in another language. */
export function formularyLanguage(context: Pick<SheetContext, "imprint" | "messages">): {
  readonly language?: string;
} {
  const tag = formularyTag(context);
  return context.messages.language.tag === tag ? {} : { language: tag };
}
