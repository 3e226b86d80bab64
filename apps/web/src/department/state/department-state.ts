import type { PersonRole, SessionAnswer } from "@steelyard/records/department";
import { type ApiProblem, isSessionOver } from "../api/api-problem.ts";
import { firstRoute, type Route } from "./department-screens.ts";

export type Person = Extract<SessionAnswer, { state: "signed-in" }>["person"];

/** Who is here, as far as the server has said. */
type Session =
  | { readonly state: "asking" }
  /** There is nobody to ask. */
  | { readonly state: "failed"; readonly problem: ApiProblem }
  | { readonly state: "set-up" }
  | { readonly state: "signed-out" }
  | {
      readonly state: "signed-in";
      readonly person: Person;
      readonly csrf: string;
      /** The server does not know the session any more; what was typed stays until its person is back. */
      readonly isOver: boolean;
    };

/** What came of a question that a screen asks. */
export type Loaded<T> =
  | { readonly state: "loading" }
  /** `isStale`: shown until a newer one is there. */
  | { readonly state: "ready"; readonly value: T; readonly isStale: boolean }
  | { readonly state: "failed"; readonly problem: ApiProblem };

/** Everything that the page knows from the server. What is being typed stays with its form. */
export interface DepartmentState {
  readonly session: Session;
  readonly route: Route;
  /** By the address of the question. */
  readonly answers: Readonly<Record<string, Loaded<unknown>>>;
  /** How often something was changed: an answer that was asked for before is not the last word. */
  readonly changes: number;
  /** Opens the names beside cases; here and nowhere else, until it is forgotten. */
  readonly passphrase: Passphrase | undefined;
}

export interface Passphrase {
  readonly text: string;
  /** It has opened a name that was there, or has sealed one: not mistyped. */
  readonly isProven: boolean;
}

export const emptyDepartment: DepartmentState = {
  session: { state: "asking" },
  route: firstRoute,
  answers: {},
  changes: 0,
  passphrase: undefined,
};

export type DepartmentEvent =
  | { readonly type: "went"; readonly route: Route }
  | { readonly type: "session-told"; readonly session: SessionAnswer }
  | { readonly type: "session-failed"; readonly problem: ApiProblem }
  | { readonly type: "asked"; readonly address: string }
  | { readonly type: "answered"; readonly address: string; readonly value: unknown }
  | { readonly type: "failed"; readonly address: string; readonly problem: ApiProblem }
  /** Something else than a question of a screen was refused. */
  | { readonly type: "refused"; readonly problem: ApiProblem }
  | { readonly type: "passphrase-typed"; readonly text: string }
  | { readonly type: "passphrase-proven" }
  | { readonly type: "passphrase-forgotten" }
  /** What was changed has to be asked again: every address that begins with one of these. */
  | { readonly type: "changed"; readonly paths: readonly string[] };

/** The next state; a pure function, and the only place where one follows from another. */
export function update(state: DepartmentState, event: DepartmentEvent): DepartmentState {
  switch (event.type) {
    case "went":
      return { ...state, route: event.route };
    case "session-told":
      return withSession(state, event.session);
    case "session-failed":
      // Who is working keeps what is on the screen; who is not yet in is told why.
      return state.session.state === "signed-in"
        ? state
        : { ...state, session: { state: "failed", problem: event.problem } };
    case "asked": {
      const before = state.answers[event.address];
      return before?.state === "ready" ? state : withAnswer(state, event.address, { state: "loading" });
    }
    case "answered":
      return withAnswer(state, event.address, { state: "ready", value: event.value, isStale: false });
    case "failed":
      return ended(
        withAnswer(state, event.address, { state: "failed", problem: event.problem }),
        event.problem,
      );
    case "refused":
      return ended(state, event.problem);
    case "passphrase-typed":
      return { ...state, passphrase: { text: event.text, isProven: false } };
    case "passphrase-proven":
      return state.passphrase === undefined
        ? state
        : { ...state, passphrase: { ...state.passphrase, isProven: true } };
    case "passphrase-forgotten":
      return { ...state, passphrase: undefined };
    case "changed":
      return {
        ...state,
        answers: withoutFresh(state.answers, event.paths),
        changes: state.changes + 1,
      };
  }
}

/** Another person sees nothing of what the last one saw; the same one goes on where the session ended. */
function withSession(state: DepartmentState, session: SessionAnswer): DepartmentState {
  if (session.state !== "signed-in") return { ...state, session, answers: {}, passphrase: undefined };
  const before = state.session;
  const isSame = before.state === "signed-in" && before.person.id === session.person.id;
  return {
    ...state,
    session: { state: "signed-in", person: session.person, csrf: session.csrf, isOver: false },
    answers: isSame ? withoutFailures(state.answers) : {},
    passphrase: isSame ? state.passphrase : undefined,
  };
}

function ended(state: DepartmentState, problem: ApiProblem): DepartmentState {
  if (state.session.state !== "signed-in" || !isSessionOver(problem)) return state;
  return { ...state, session: { ...state.session, isOver: true }, passphrase: undefined };
}

function withAnswer(state: DepartmentState, address: string, answer: Loaded<unknown>): DepartmentState {
  return { ...state, answers: { ...state.answers, [address]: answer } };
}

function withoutFailures(answers: DepartmentState["answers"]): DepartmentState["answers"] {
  return Object.fromEntries(Object.entries(answers).filter(([, { state }]) => state === "ready"));
}

function withoutFresh(
  answers: DepartmentState["answers"],
  paths: readonly string[],
): DepartmentState["answers"] {
  const isMeant = (address: string): boolean =>
    paths.some((path) => address === `/api/${path}` || address.startsWith(`/api/${path}?`));
  return Object.fromEntries(
    Object.entries(answers)
      .filter(([address, { state }]) => state === "ready" || !isMeant(address))
      .map(([address, answer]) => [
        address,
        answer.state === "ready" && isMeant(address) ? { ...answer, isStale: true } : answer,
      ]),
  );
}

export function hasRole(person: Pick<Person, "roles">, ...roles: readonly PersonRole[]): boolean {
  return person.roles.some((role) => roles.includes(role));
}
