import type { EntryIssue, Session, SignInIssue } from "@steelyard/records/accounts";
import { csrfOf, type PasswordIssue } from "@steelyard/records/accounts";
import {
  type JoinRequest,
  joinRequestSchema,
  nothing,
  type PasswordRequest,
  type PersonRole,
  passwordAnswerSchema,
  passwordRequestSchema,
  type SessionAnswer,
  type SetUpRequest,
  type SignInRequest,
  sessionAnswerSchema,
  setUpRequestSchema,
  signedOutSchema,
  signInRequestSchema,
} from "@steelyard/records/department";
import { sessionCookie } from "../sessions/session-cookie.ts";
import { everyPerson, type Route, type RouteReply } from "./route.ts";

/** Beside the delays of failures: each takes the time and memory of a hash. */
const GUESSES_PER_MINUTE = 30;

/** Whether anybody is there and who is signed in; the page asks it first. */
export const sessionRoute: Route = {
  method: "GET",
  url: "/api/session",
  roles: "anyone",
  replies: { 200: sessionAnswerSchema },
  handle: async ({ session }, { accounts }) => {
    if (session !== undefined) return { status: 200, body: signedIn(session) };
    return { status: 200, body: { state: (await accounts.isSetUp()) ? "signed-out" : "set-up" } };
  },
};

/** The first administrator, by the code that the server printed while nobody was there. */
export const setUpRoute: Route = {
  method: "POST",
  url: "/api/set-up",
  roles: "anyone",
  perMinute: GUESSES_PER_MINUTE,
  body: setUpRequestSchema,
  replies: { 200: sessionAnswerSchema },
  handle: async ({ body, ip, origin }, { accounts }) => {
    const done = await accounts.setUp({ ...(body as SetUpRequest), address: ip });
    return done.ok ? begin(done.value, origin) : refusal(done.error);
  },
};

export const signInRoute: Route = {
  method: "POST",
  url: "/api/session",
  roles: "anyone",
  perMinute: GUESSES_PER_MINUTE,
  body: signInRequestSchema,
  replies: { 200: sessionAnswerSchema },
  handle: async ({ body, ip, origin, session }, { accounts }) => {
    const done = await accounts.signIn({ ...(body as SignInRequest), address: ip });
    if (!done.ok) return refusal(done.error);
    // Whoever was signed in before in this browser is no longer.
    if (session !== undefined) await accounts.endSession({ ...session, person: session.person.id });
    return begin(done.value, origin);
  },
};

/** Takes an invitation. */
export const joinRoute: Route = {
  method: "POST",
  url: "/api/join",
  roles: "anyone",
  perMinute: GUESSES_PER_MINUTE,
  body: joinRequestSchema,
  replies: { 200: sessionAnswerSchema },
  handle: async ({ body, ip, origin }, { accounts }) => {
    const done = await accounts.join({ ...(body as JoinRequest), address: ip });
    return done.ok ? begin(done.value, origin) : refusal(done.error);
  },
};

export const signOutRoute: Route = {
  method: "POST",
  url: "/api/session/end",
  roles: everyPerson,
  body: nothing,
  replies: { 200: signedOutSchema },
  handle: async ({ session, origin }, { accounts }) => {
    if (session !== undefined) await accounts.endSession({ ...session, person: session.person.id });
    const cookie = sessionCookie(undefined, { secure: isSecure(origin) });
    return { status: 200, body: { state: "signed-out" }, headers: { "set-cookie": cookie } };
  },
};

/** Another password; every other session of the person ends. */
export const passwordRoute: Route = {
  method: "POST",
  url: "/api/password",
  roles: everyPerson,
  perMinute: GUESSES_PER_MINUTE,
  body: passwordRequestSchema,
  replies: { 200: passwordAnswerSchema },
  handle: async ({ body, session, ip }, { accounts }) => {
    if (session === undefined) throw new TypeError("Cannot change a password as there is no session");
    const { person, token } = session;
    const order = { ...(body as PasswordRequest), person: person.id, token, address: ip };
    const done = await accounts.changePassword(order);
    return done.ok ? { status: 200, body: { changed: true } } : refusal(done.error);
  },
};

/** The answer with which a session begins: its cookie, who it is, and what goes back with every POST. */
export function begin(session: Session, origin: string): RouteReply {
  const cookie = sessionCookie(session.token, { secure: isSecure(origin) });
  return { status: 200, body: signedIn(session), headers: { "set-cookie": cookie } };
}

function isSecure(origin: string): boolean {
  return origin.startsWith("https:");
}

function signedIn({ person, token }: Session): SessionAnswer {
  const { id, name, login = "", roles, site } = person;
  return {
    state: "signed-in",
    person: { id, name, login, roles: roles as readonly PersonRole[], site },
    csrf: csrfOf(token),
  };
}

type Refusal = EntryIssue | SignInIssue | PasswordIssue | { readonly type: "set-up-already" };

export function refusal(issue: Refusal): RouteReply {
  const { type: problem } = issue;
  switch (issue.type) {
    case "wrong-credentials":
      return { status: 401, body: { problem }, headers: { "www-authenticate": "Session" } };
    case "wrong-code":
      return { status: 403, body: { problem } };
    case "locked": {
      return { status: 429, body: { problem, reason: issue.until } };
    }
    case "login-taken":
    case "set-up-already":
      return { status: 409, body: { problem } };
    case "too-short":
      return { status: 422, body: { problem, reason: `at least ${issue.min} characters` } };
    case "too-long":
      return { status: 422, body: { problem, reason: `at most ${issue.max} characters` } };
    case "names-you":
    case "too-common":
      return { status: 422, body: { problem } };
  }
}
