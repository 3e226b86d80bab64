import { hydrate } from "preact";
import { App } from "./app.tsx";
import { Spoken } from "./components/language/spoken.tsx";
import type { Effects } from "./effects/effects.ts";
import { findPins, keepPins } from "./effects/kept-pins.ts";
import { findSite } from "./effects/kept-site.ts";
import { keepTexts, keptTexts, typedAhead } from "./effects/kept-texts.ts";
import { languageEffects } from "./effects/language-effects.ts";
import { loadCaseLog } from "./effects/load-case-log.ts";
import { loadLater } from "./effects/load-later.ts";
import { loadScreen } from "./effects/load-screen.ts";
import { giveUpPad, wantsPad } from "./effects/number-pad.ts";
import { watchDay } from "./effects/watch-day.ts";
import { watchOffline } from "./effects/watch-offline.ts";
import { watchPrinting } from "./effects/watch-printing.ts";
import { showScreen, watchRoute } from "./effects/watch-route.ts";

const place = document.getElementById("app");
if (place === null) throw new Error("the page has no #app");

// Looked for now: the first render empties the fields, and what was typed ahead would be lost.
const found = typedAhead() ?? keptTexts();
const effects: Effects = {
  findTexts: () => found,
  keepTexts,
  findPins,
  keepPins,
  findSite,
  watchDay,
  wantsPad,
  giveUpPad,
  loadLater,
  loadCaseLog,
  loadScreen,
  reload: () => location.reload(),
  watchRoute,
  showScreen,
  watchOffline,
  watchPrinting,
};
hydrate(<Spoken effects={languageEffects}>{() => <App effects={effects} />}</Spoken>, place);
// For whoever measures how long the start takes.
performance.mark("usable");
