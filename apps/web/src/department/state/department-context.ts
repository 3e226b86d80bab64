import type { Result } from "@steelyard/core/result";
import { createContext } from "preact";
import { useCallback, useContext, useEffect, useRef, useState } from "preact/hooks";
import type { ApiProblem } from "../api/api-problem.ts";
import { type Asked, addressOf } from "../api/ask.ts";
import {
  type DepartmentEvent,
  type DepartmentState,
  emptyDepartment,
  type Loaded,
} from "./department-state.ts";

/** Asks the server for this tab, with the proof of its session. */
export type Ask = <T>(asked: Asked<T>) => Promise<Result<T, ApiProblem>>;

interface Department {
  readonly state: DepartmentState;
  readonly send: (event: DepartmentEvent) => void;
  readonly ask: Ask;
}

export const DepartmentContext = createContext<Department>({
  state: emptyDepartment,
  send: () => undefined,
  ask: () => new Promise(() => undefined),
});

export function useDepartment(): Department {
  return useContext(DepartmentContext);
}

const waiting: Loaded<never> = { state: "loading" };

/** The answer to a question of a screen: asked when the screen comes, and again when something changed or the session is back. */
export function useAnswer<T>(asked: Asked<T>): Loaded<T> & { readonly again: () => void } {
  const { state, send, ask } = useDepartment();
  const address = addressOf(asked);
  const answer = state.answers[address] as Loaded<T> | undefined;
  const isOver = state.session.state === "signed-in" && state.session.isOver;
  const isMissing =
    answer === undefined || answer.state === "loading" || (answer.state === "ready" && answer.isStale);
  // What changes while an answer is on its way is asked for anew, and the answer that comes too late is dropped.
  const changes = isMissing ? state.changes : undefined;
  useEffect(() => {
    if (!isMissing || isOver) return;
    let isWanted = true;
    send({ type: "asked", address });
    void ask(asked).then((result) => {
      if (!isWanted) return;
      send(
        result.ok
          ? { type: "answered", address, value: result.value }
          : { type: "failed", address, problem: result.error },
      );
    });
    return () => {
      isWanted = false;
    };
  }, [address, isMissing, isOver, changes]);
  const again = useCallback(
    () => send({ type: "changed", paths: [address.slice("/api/".length)] }),
    [address, send],
  );
  return { ...(answer ?? waiting), again };
}

/** Something that a person does: one at a time, with what the server says against it. */
export function useAct(): {
  readonly isBusy: boolean;
  readonly problem: ApiProblem | undefined;
  readonly forget: () => void;
  readonly act: <T>(asked: Asked<T>, done: (value: T) => void) => void;
} {
  const { send, ask } = useDepartment();
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ApiProblem | undefined>(undefined);
  const isRunning = useRef(false);
  return {
    isBusy,
    problem,
    forget: () => setProblem(undefined),
    act: (asked, done) => {
      if (isRunning.current) return;
      isRunning.current = true;
      setBusy(true);
      setProblem(undefined);
      void ask(asked).then((result) => {
        isRunning.current = false;
        setBusy(false);
        if (result.ok) return done(result.value);
        setProblem(result.error);
        send({ type: "refused", problem: result.error });
      });
    },
  };
}
