import type { VNode } from "preact";
import { useEffect, useMemo, useReducer, useRef, useState } from "preact/hooks";
import type { OfflineState } from "./components/cautions/cautions.tsx";
import type { Effects } from "./effects/effects.ts";
import { Frame, mainId } from "./frame/frame.tsx";
import { LaterScreen } from "./frame/later-screen.tsx";
import type { Later } from "./later/later.ts";
import { messages } from "./messages/index.ts";
import { language } from "./messages/language.ts";
import { Bedside } from "./screens/bedside/bedside.tsx";
import { NextChild } from "./screens/bedside/next-child.tsx";
import type { CaseLog } from "./screens/case-log/case-log.tsx";
import { emptyBedside } from "./state/bedside-state.ts";
import { type Giving, GivingContext } from "./state/giving.ts";
import { readBedside } from "./state/read-bedside.ts";
import { firstRoute, type Route } from "./state/screens.ts";
import { siteInUse } from "./state/site-in-use.ts";
import { update } from "./state/update.ts";
import { versionsOf } from "./state/versions.ts";

/** How long a pause in typing is before a doubtful number is spoken of, ms: long enough for the next digit. */
const pauseMs = 900;

/** State, the view computed from it, and the effects around it. */
export function App({ effects }: { readonly effects: Effects }): VNode {
  const [state, send] = useReducer(update, emptyBedside);
  const [route, setRoute] = useState<Route>(firstRoute);
  const [printing, setPrinting] = useState(false);
  const [offline, setOffline] = useState<OfflineState>("unknown");
  const [hasPad, setPad] = useState(false);
  const [log, setLog] = useState<{ readonly CaseLog: typeof CaseLog } | undefined>(undefined);
  const [giving, setGiving] = useState<Giving | undefined>(undefined);
  const [later, setLater] = useState<Later | "failed" | undefined>(undefined);
  const view = useMemo(
    () => readBedside(state),
    [state.texts, state.typing, state.today, state.site, language],
  );
  const { child } = view;
  const loaded = typeof later === "object" ? later : undefined;
  const burn = useMemo(
    () => loaded?.readBurn({ texts: state.texts, typing: state.typing }),
    [loaded, state.texts.burnPercent, state.typing, language],
  );
  const report = useMemo(
    () =>
      child &&
      // Not before it is known by which formulary.
      state.formulary &&
      loaded?.computeReport({
        child,
        choices: state.choices,
        site: siteInUse(state.site),
        formulary: state.formulary.own?.formulary,
        burnPercent: burn?.burnPercent,
      }),
    [child, loaded, state.choices, state.site, state.formulary, burn?.burnPercent],
  );

  const items = useMemo(
    () => [
      ...view.messages,
      ...(burn?.messages ?? []),
      ...(loaded?.slipMessages({ ...view, typing: state.typing, site: siteInUse(state.site) }) ?? []),
    ],
    [view, burn, loaded, state.typing, state.site, language],
  );

  useEffect(() => {
    send({ type: "site-known", site: effects.findSite() });
    const found = effects.findTexts();
    if (found !== undefined) send({ type: "found", ...found });
    send({ type: "pins-found", pinned: effects.findPins() });
    effects.watchDay((today) => send({ type: "day-known", today }));
    effects
      .loadLater()
      .then(async (part) => {
        part.watchRules((rules) => send({ type: "rules-came", rules }));
        setLater(part);
        const { formulary, next } = await part.findRules();
        send({ type: "formulary-known", formulary });
        send({ type: "rules-came", rules: next });
      })
      .catch(() => setLater("failed"));
    // Without its log the sheet is whole; the log says by itself where it can keep nothing.
    effects.loadCaseLog().then(
      (CaseLog) => setLog({ CaseLog }),
      () => undefined,
    );
    effects.watchOffline(setOffline);
    effects.watchPrinting(setPrinting);
    effects.watchRoute(setRoute);
    setPad(effects.wantsPad());
  }, [effects]);

  useEffect(() => {
    effects.keepTexts(state.texts);
    if (state.typing === undefined) return;
    const pause = setTimeout(() => send({ type: "settled" }), pauseMs);
    return () => clearTimeout(pause);
  }, [effects, state.texts, state.typing]);

  useEffect(() => {
    // Not before those of the device have been looked for.
    if (state.pinned !== emptyBedside.pinned) effects.keepPins(state.pinned);
  }, [effects, state.pinned]);

  useEffect(() => {
    if (state.formulary === undefined || loaded === undefined) return;
    loaded.setRunning(versionsOf(state));
    void loaded.settleRules(state);
  }, [loaded, state.formulary, state.site]);

  const shown = useRef(route.screen);
  useEffect(() => {
    if (shown.current === route.screen) return;
    shown.current = route.screen;
    effects.showScreen({ title: messages.windowTitle(messages.screens[route.screen]), mainId });
  }, [effects, route.screen]);

  // Paper carries the child's sheet, whatever screen it is asked for from.
  const screen = printing && child !== undefined ? "bedside" : route.screen;
  return (
    <Frame
      screen={screen}
      state={state}
      offline={offline}
      pad={
        hasPad && loaded !== undefined && <loaded.NumberPad onGiveUp={() => setPad(effects.giveUpPad())} />
      }
      actions={screen === "bedside" && <NextChild state={state} send={send} />}
    >
      {screen === "bedside" ? (
        <GivingContext.Provider value={giving}>
          <Bedside
            state={state}
            view={view}
            items={items}
            later={later}
            report={report}
            printing={printing}
            send={send}
            onReload={effects.reload}
          />
          {log !== undefined && state.formulary !== undefined && (
            <log.CaseLog state={state} child={child} report={report} onGiving={setGiving} />
          )}
        </GivingContext.Provider>
      ) : (
        <LaterScreen
          screen={screen}
          path={route.path}
          child={child}
          texts={state.texts}
          site={state.site}
          formulary={state.formulary}
          next={state.next}
          send={send}
          load={effects.loadScreen}
          onReload={effects.reload}
        />
      )}
    </Frame>
  );
}
