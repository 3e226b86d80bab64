import { cautionBlock } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { LanguageSwitch } from "../../components/language/language-switch.tsx";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import { versions } from "../../state/versions.ts";
import { words } from "../messages/index.ts";

/** The words that every output carries, the way back to Bedside, and what this page computes with. */
export function DepartmentFoot(): VNode {
  const { title, lines } = cautionBlock(language?.messages);
  return (
    <footer class="cautions">
      <h2>{title}</h2>
      <ul>
        {lines.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <LanguageSwitch />
      <p class="screen-only">
        <a href="/">{words.toBedside}</a>
      </p>
      <p>
        {messages.versions({
          ...versions,
          formulary: formularyIndex.version,
          formularySigned: formularyIndex.signed,
        })}
      </p>
    </footer>
  );
}
