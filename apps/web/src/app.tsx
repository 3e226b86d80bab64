import type { VNode } from "preact";
import { useEffect, useMemo, useReducer, useState } from "preact/hooks";
import type { OfflineState } from "./components/cautions/cautions.tsx";
import type { Effects } from "./effects/effects.ts";
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
  const view = useMemo(() => readBedside(state), [state.texts, state.typing]);

  useEffect(() => {
    const found = effects.findTexts();
    if (found !== undefined) send({ type: "found", ...found });
    effects.watchOffline(setOffline);
    effects.watchPrinting(setPrinting);
  }, [effects]);

  useEffect(() => {
    effects.keepTexts(state.texts);
    if (state.typing === undefined) return;
    const pause = setTimeout(() => send({ type: "settled" }), pauseMs);
    return () => clearTimeout(pause);
  }, [effects, state.texts, state.typing]);

  return <Bedside state={state} view={view} offline={offline} printing={printing} send={send} />;
}
