import type { VNode } from "preact";
import { useEffect, useMemo, useReducer, useState } from "preact/hooks";
import type { OfflineState } from "./components/cautions/cautions.tsx";
import type { Effects } from "./effects/effects.ts";
import type { NextHint } from "./later/compute-report.ts";
import type { Later } from "./later/later.ts";
import { Bedside } from "./screens/bedside/bedside.tsx";
import { emptyBedside } from "./state/bedside-state.ts";
import { readBedside } from "./state/read-bedside.ts";
import { update } from "./state/update.ts";

/** How long a pause in typing is before a doubtful number is spoken of, ms: long enough for the next digit. */
const pauseMs = 900;

/** State, the view computed from it, and the effects around it. */
export function App({ effects }: { readonly effects: Effects }): VNode {
  const [state, send] = useReducer(update, emptyBedside);
  const [printing, setPrinting] = useState(false);
  const [offline, setOffline] = useState<OfflineState>("unknown");
  const [later, setLater] = useState<Later | "failed" | undefined>(undefined);
  const [next, setNext] = useState<NextHint | undefined>(undefined);
  const view = useMemo(() => readBedside(state), [state.texts, state.typing]);
  const { child } = view;
  const loaded = typeof later === "object" ? later : undefined;
  const report = useMemo(() => child && loaded?.computeReport(child), [child, loaded]);

  useEffect(() => {
    const found = effects.findTexts();
    if (found !== undefined) send({ type: "found", ...found });
    effects.loadLater().then(setLater, () => setLater("failed"));
    effects.watchOffline(setOffline);
    effects.watchPrinting(setPrinting);
  }, [effects]);

  useEffect(() => {
    effects.keepTexts(state.texts);
    if (state.typing === undefined) return;
    const pause = setTimeout(() => send({ type: "settled" }), pauseMs);
    return () => clearTimeout(pause);
  }, [effects, state.texts, state.typing]);

  // Not while the sheet is being filled: nobody waits for a hint.
  useEffect(() => {
    if (child === undefined || loaded === undefined || state.typing !== undefined) return setNext(undefined);
    const soon = setTimeout(() => setNext(loaded.bestNextMeasurement(child)));
    return () => clearTimeout(soon);
  }, [child, loaded, state.typing]);

  return (
    <Bedside
      state={state}
      view={view}
      later={later}
      report={report}
      next={next}
      offline={offline}
      printing={printing}
      send={send}
      onReload={effects.reload}
    />
  );
}
