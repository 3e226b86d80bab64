import type { ComponentChildren, VNode } from "preact";
import { Cautions, type OfflineState } from "../components/cautions/cautions.tsx";
import { DraftBanner } from "../components/draft-banner/draft-banner.tsx";
import { LanguageNote } from "../components/language/language-note.tsx";
import { Masthead } from "../components/masthead/masthead.tsx";
import type { ScreenId } from "../state/screens.ts";
import { versions } from "../state/versions.ts";

interface Props {
  readonly screen: ScreenId;
  readonly offline: OfflineState;
  /** What the screen puts beside its name. */
  readonly actions?: ComponentChildren;
  /** The keys for numbers, where fingers want them. */
  readonly pad?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The id of the part that takes the focus when the reader comes to another screen. */
export const mainId = "main";

/** What stands around every screen: the banner, the name and the menu, the cautions and what runs here. */
export function Frame({ screen, offline, actions, pad, children }: Props): VNode {
  return (
    <>
      <LanguageNote />
      <DraftBanner />
      <div class="frame">
        <Masthead screen={screen} actions={actions} />
        <main id={mainId} class="frame__main" tabIndex={-1} aria-labelledby="screen-name">
          {children}
        </main>
        <Cautions versions={versions} offline={offline} />
      </div>
      {pad}
    </>
  );
}
