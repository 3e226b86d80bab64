import {
  type EndSessionsRequest,
  endedSessionsSchema,
  endSessionsRequestSchema,
  sessionsAnswerSchema,
} from "@steelyard/records/department";
import { everyPerson, type Route } from "./route.ts";
import { refusal } from "./session-routes.ts";

const GUESSES_PER_MINUTE = 30;

/** Where a person is signed in: the own sessions and nobody else's. */
export const ownSessionsRoute: Route = {
  method: "GET",
  url: "/api/sessions",
  roles: everyPerson,
  replies: { 200: sessionsAnswerSchema },
  handle: async ({ session }, { accounts }) => {
    if (session === undefined) throw new TypeError("Cannot list sessions as there is no session");
    const { person, token } = session;
    return { status: 200, body: { sessions: await accounts.listSessions({ person: person.id, token }) } };
  },
};

/** Ends another one, or all others, against the password: whoever found a browser open does not turn its owner out. */
export const endOwnSessionsRoute: Route = {
  method: "POST",
  url: "/api/sessions/end",
  roles: everyPerson,
  perMinute: GUESSES_PER_MINUTE,
  body: endSessionsRequestSchema,
  replies: { 200: endedSessionsSchema },
  handle: async ({ body, session, ip }, { accounts }) => {
    if (session === undefined) throw new TypeError("Cannot end sessions as there is no session");
    const { person, token } = session;
    const { password, id } = body as EndSessionsRequest;
    const done = await accounts.endOtherSessions({ person: person.id, token, password, id, address: ip });
    if (!done.ok) return refusal(done.error);
    if (id !== undefined && done.value === 0) return { status: 404, body: { problem: "unknown-session" } };
    return { status: 200, body: { ended: done.value } };
  },
};
