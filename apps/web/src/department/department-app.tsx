import { sessionAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useEffect, useMemo, useReducer, useRef } from "preact/hooks";
import { ask as askServer } from "./api/ask.ts";
import type { PageEffects } from "./effects/page-effects.ts";
import { watchIdle } from "./effects/watch-idle.ts";
import { DepartmentFrame } from "./frame/department-frame.tsx";
import { ScreenOf } from "./frame/screen-of.tsx";
import { words } from "./messages/index.ts";
import { Away } from "./screens/account/away.tsx";
import { Join } from "./screens/account/join.tsx";
import { SetUp } from "./screens/account/set-up.tsx";
import { SignIn } from "./screens/account/sign-in.tsx";
import { type Ask, DepartmentContext } from "./state/department-context.ts";
import { mayGo, screensFor } from "./state/department-screens.ts";
import { type DepartmentState, emptyDepartment, update } from "./state/department-state.ts";

/** State, the view of it, and the one way to the server. */
export function DepartmentApp({ effects }: { readonly effects: PageEffects }): VNode {
  const [state, send] = useReducer(update, emptyDepartment);
  const latest = useRef(state);
  latest.current = state;
  const ask = useMemo<Ask>(
    () => async (asked) => {
      const { session } = latest.current;
      if (session.state !== "signed-in") return askServer(asked);
      const result = await askServer(asked, { csrf: session.csrf });
      if (result.ok || result.error.type !== "refused" || result.error.problem !== "wrong-csrf")
        return result;
      // Another tab has signed in anew: with its proof, if it is the same person.
      const now = await askServer({ path: "session", schema: sessionAnswerSchema });
      if (!now.ok) return result;
      send({ type: "session-told", session: now.value });
      const isSame = now.value.state === "signed-in" && now.value.person.id === session.person.id;
      return isSame && now.value.state === "signed-in" ? askServer(asked, { csrf: now.value.csrf }) : result;
    },
    [],
  );
  const look = (): void => {
    void ask({ path: "session", schema: sessionAnswerSchema }).then((result) =>
      send(
        result.ok
          ? { type: "session-told", session: result.value }
          : { type: "session-failed", problem: result.error },
      ),
    );
  };
  useEffect(() => {
    effects.watchRoute((route) => send({ type: "went", route }));
    look();
  }, [effects]);

  const isUnlocked = state.passphrase !== undefined;
  useEffect(() => {
    return isUnlocked ? watchIdle(() => send({ type: "passphrase-forgotten" })) : undefined;
  }, [isUnlocked]);

  const screen = screenOf(state);
  const place = [state.session.state, screen, ...state.route.path].join("/");
  const shown = useRef<string | undefined>(undefined);
  useEffect(() => {
    // Not while the page finds out who is there: the first screen takes the focus from nobody.
    if (state.session.state === "asking" || shown.current === place) return;
    const isFirst = shown.current === undefined;
    shown.current = place;
    if (!isFirst) effects.showScreen(words.windowTitle(nameOf(state)));
  }, [effects, place]);

  const context = useMemo(() => ({ state, send, ask }), [state, ask]);
  return (
    <DepartmentContext.Provider value={context}>
      <DepartmentFrame name={nameOf(state)} screen={screen}>
        <Inside state={state} onLook={look} />
      </DepartmentFrame>
    </DepartmentContext.Provider>
  );
}

/** What is in the frame: the way in, or a screen, with the way back in over it once its session is over. */
export function Inside({
  state,
  onLook,
}: {
  readonly state: DepartmentState;
  readonly onLook: () => void;
}): VNode {
  const { session, route } = state;
  switch (session.state) {
    case "asking":
      return <p role="status">{words.asking}</p>;
    case "failed":
      return <Away problem={session.problem} onAgain={onLook} />;
    case "set-up":
      return <SetUp />;
    case "signed-out":
      return route.screen === "join" ? <Join /> : <SignIn />;
    case "signed-in": {
      const screen = screenOf(state);
      return (
        <>
          {session.isOver && <SignIn over={session.person} />}
          {/* Kept, out of sight and out of reach: what was typed is there again afterwards. */}
          <div hidden={session.isOver}>
            {screen === undefined ? (
              <p role="alert">{words.notAllowed}</p>
            ) : (
              <ScreenOf
                key={`${session.person.id} ${screen}`}
                screen={screen}
                path={route.path}
                person={session.person}
              />
            )}
          </div>
        </>
      );
    }
  }
}

/** The screen that the address asks for, where the person may see it; without one in the address, the first there is. */
function screenOf({ session, route }: DepartmentState): Exclude<typeof route.screen, "join"> {
  if (session.state !== "signed-in") return undefined;
  const { roles } = session.person;
  const wanted = route.screen === "join" ? undefined : route.screen;
  if (wanted !== undefined) return mayGo(wanted, roles) ? wanted : undefined;
  return screensFor(roles)[0];
}

function nameOf(state: DepartmentState): string {
  const { session, route } = state;
  if (session.state === "set-up") return words.account.setUpTitle;
  if (session.state === "signed-out")
    return route.screen === "join" ? words.account.joinTitle : words.account.signInTitle;
  const screen = screenOf(state);
  return screen === undefined ? words.name : words.screens[screen];
}
