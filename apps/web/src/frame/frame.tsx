import type { ComponentChildren, VNode } from "preact";
import { Cautions, type OfflineState } from "../components/cautions/cautions.tsx";
import { DraftBanner } from "../components/draft-banner/draft-banner.tsx";
import { FormularyTag } from "../components/formulary-text/formulary-text.tsx";
import { LanguageNote } from "../components/language/language-note.tsx";
import { Masthead } from "../components/masthead/masthead.tsx";
import { messages } from "../messages/index.ts";
import type { BedsideState } from "../state/bedside-state.ts";
import type { ScreenId } from "../state/screens.ts";
import { siteInUse } from "../state/site-in-use.ts";
import { versionsOf } from "../state/versions.ts";

interface Props {
  readonly screen: ScreenId;
  readonly state: BedsideState;
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
export function Frame({ screen, state, offline, actions, pad, children }: Props): VNode {
  const { site, formulary } = state;
  return (
    <FormularyTag.Provider value={formulary?.index.language ?? "en"}>
      <LanguageNote />
      {formulary?.index.signed !== true && <DraftBanner />}
      <div class="frame">
        <Masthead screen={screen} actions={actions} />
        {site !== undefined && siteInUse(site) === undefined && (
          <p class="frame__other-model" role="alert">
            {messages.otherModel({ name: site.identity.name, model: site.modelVersion })}
          </p>
        )}
        {formulary?.lost !== undefined && (
          <p class="frame__other-model" role="alert">
            {messages.lostFormulary(formulary.lost)}
          </p>
        )}
        <main id={mainId} class="frame__main" tabIndex={-1} aria-labelledby="screen-name">
          {children}
        </main>
        <Cautions versions={versionsOf(state)} waits={state.next !== undefined} offline={offline} />
      </div>
      {pad}
    </FormularyTag.Provider>
  );
}
