import { cautionBlock } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import type { RunningVersions } from "../../state/site-rules.ts";
import { LanguageSwitch } from "../language/language-switch.tsx";

/** What the page knows about working without a network. */
export type OfflineState = "unknown" | "ready" | "update-waits";

interface Props {
  readonly versions: RunningVersions;
  /** Other rules of the site wait for the next child. */
  readonly waits: boolean;
  readonly offline: OfflineState;
}

/** The words that every output carries, and which versions it came from. */
export function Cautions({ versions, waits, offline }: Props): VNode {
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
        {waits && `${messages.rulesWait} `}
        {offline === "ready" && messages.offlineReady}
        {offline === "update-waits" && messages.updateWaits}
      </p>
    </footer>
  );
}
