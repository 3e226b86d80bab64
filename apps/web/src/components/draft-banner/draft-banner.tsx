import { draftBanner } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { language } from "../../messages/language.ts";

/** Stands at the top as long as nobody has signed the formulary. */
export function DraftBanner(): VNode {
  const { title, lines } = draftBanner(language?.messages);
  return (
    <aside class="draft-banner" aria-label={title}>
      <b>{title}.</b> {lines.join(" ")}
    </aside>
  );
}
