import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";

/** Says of words that no person has reviewed that they are such, and in which language the formulary is. */
export function LanguageNote(): VNode | null {
  if (language?.unreviewed === undefined) return null;
  return (
    <aside class="language-note" aria-label={language.unreviewed}>
      <b>{language.unreviewed}</b> {messages.language.formulary}
    </aside>
  );
}
