import type { ChildReport } from "@steelyard/core/child";
import { cautionBlock } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { LanguageSwitch } from "../language/language-switch.tsx";

/** What the page knows about working without a network. */
export type OfflineState = "unknown" | "ready" | "update-waits";

interface Props {
  readonly versions: ChildReport["versions"];
  readonly offline: OfflineState;
}

/** The words that every output carries, and which versions it came from. */
export function Cautions({ versions, offline }: Props): VNode {
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
      <p>{messages.versions(versions)}</p>
      <p class="screen-only" role="status">
        {offline === "ready" && messages.offlineReady}
        {offline === "update-waits" && messages.updateWaits}
      </p>
    </footer>
  );
}
