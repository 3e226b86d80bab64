import type { VNode } from "preact";
import { useContext } from "preact/hooks";
import { messages } from "../../messages/index.ts";
import { LanguageContext, languageNames, languageTags } from "./language-context.ts";

/** The languages, each under its own name. */
export function LanguageSwitch(): VNode {
  const { tag, missing, choose } = useContext(LanguageContext);
  return (
    <fieldset class="language screen-only" aria-label={messages.language.choose}>
      {languageTags.map((own) => (
        <button
          key={own}
          class="language__name"
          type="button"
          lang={own}
          aria-pressed={own === tag}
          onClick={() => choose(own)}
        >
          {languageNames[own]}
        </button>
      ))}
      <span role="status">{missing !== undefined && messages.language.missing(languageNames[missing])}</span>
    </fieldset>
  );
}
