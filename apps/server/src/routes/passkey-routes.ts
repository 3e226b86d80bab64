import {
  type AddPasskeyRequest,
  addPasskeyRequestSchema,
  nothing,
  type PasskeySignInRequest,
  passkeyIdSchema,
  passkeyOptionsSchema,
  passkeySignInOptionsSchema,
  passkeySignInRequestSchema,
  passkeysAnswerSchema,
  removedSchema,
  sessionAnswerSchema,
} from "@steelyard/records/department";
import {
  beginAdding,
  beginSignIn,
  finishAdding,
  finishSignIn,
  type RelyingParty,
  relyingParty,
} from "../sessions/passkeys.ts";
import { everyPerson, type Route, type RouteReply, type RouteRequest, type RouteService } from "./route.ts";
import { begin, refusal } from "./session-routes.ts";

const GUESSES_PER_MINUTE = 30;
/** A browser left open must not be enough to plant a key that outlives the session. */
const FRESH_MS = 10 * 60_000;

export const passkeysRoute: Route = {
  method: "GET",
  url: "/api/passkeys",
  roles: everyPerson,
  replies: { 200: passkeysAnswerSchema },
  handle: async (request, { accounts }) => {
    const rows = await accounts.passkeys.list(sessionOf(request).person.id);
    const passkeys = rows.map(({ id, name, at, last_used_at }) => ({
      id,
      name,
      at,
      ...(last_used_at === null ? {} : { lastUsedAt: last_used_at }),
    }));
    return { status: 200, body: { passkeys } };
  },
};

export const beginPasskeyRoute: Route = {
  method: "POST",
  url: "/api/passkeys/begin",
  roles: everyPerson,
  body: nothing,
  replies: { 200: passkeyOptionsSchema },
  handle: (request, service) =>
    withParty(request, service, async (party) => {
      const session = sessionOf(request);
      const now = service.store.clock();
      if (Date.parse(now) - Date.parse(session.startedAt) > FRESH_MS) {
        return { status: 403, body: { problem: "sign-in-again" } };
      }
      return { status: 200, body: { options: await beginAdding(service.accounts, session, { party, now }) } };
    }),
};

export const addPasskeyRoute: Route = {
  method: "POST",
  url: "/api/passkeys",
  roles: everyPerson,
  body: addPasskeyRequestSchema,
  replies: { 200: passkeyIdSchema },
  handle: (request, service) =>
    withParty(request, service, async (party) => {
      const order = { party, ...(request.body as AddPasskeyRequest) };
      const added = await finishAdding(service.accounts, sessionOf(request), order);
      if ("id" in added) return { status: 200, body: added };
      return { status: added.problem === "faulty-passkey" ? 422 : 409, body: added };
    }),
};

export const removePasskeyRoute: Route = {
  method: "POST",
  url: "/api/passkeys/remove",
  roles: everyPerson,
  body: passkeyIdSchema,
  replies: { 200: removedSchema },
  handle: async (request, { accounts }) => {
    const { id } = request.body as { readonly id: string };
    const { person, token } = sessionOf(request);
    const done = await accounts.passkeys.remove({ person, id, keepToken: token });
    return done
      ? { status: 200, body: { removed: true } }
      : { status: 404, body: { problem: "unknown-passkey" } };
  },
};

export const beginPasskeySignInRoute: Route = {
  method: "POST",
  url: "/api/session/passkey/begin",
  roles: "anyone",
  perMinute: GUESSES_PER_MINUTE,
  body: nothing,
  replies: { 200: passkeySignInOptionsSchema },
  handle: (request, service) =>
    withParty(request, service, async (party) => ({
      status: 200,
      body: await beginSignIn(service.accounts, { party, now: service.store.clock() }),
    })),
};

export const passkeySignInRoute: Route = {
  method: "POST",
  url: "/api/session/passkey",
  roles: "anyone",
  perMinute: GUESSES_PER_MINUTE,
  body: passkeySignInRequestSchema,
  replies: { 200: sessionAnswerSchema },
  handle: (request, service) =>
    withParty(request, service, async (party) => {
      const { accounts, store, settings } = service;
      // Nobody guesses a signature, so failures make no one wait: whoever fails at passwords keeps no owner of a key out.
      const person = await finishSignIn(accounts, { party, ...(request.body as PasskeySignInRequest) });
      const session =
        person === undefined ? undefined : await accounts.startSession({ person, by: "passkey" });
      if (session === undefined) {
        const subject = person ?? "unknown-passkey";
        await store.note({ site: settings.site, actor: "anyone", action: "session.refused", subject });
        return refusal({ type: "wrong-credentials" });
      }
      if (request.session !== undefined) {
        await accounts.endSession({ ...request.session, person: request.session.person.id });
      }
      return begin(session, request.origin);
    }),
};

function sessionOf({ session }: RouteRequest): NonNullable<RouteRequest["session"]> {
  if (session === undefined) throw new TypeError("Cannot go on as there is no session");
  return session;
}

/** Passkeys belong to a name; where the page has none of its own, that is said and nothing tried. */
async function withParty(
  { origin }: RouteRequest,
  { settings }: RouteService,
  work: (party: RelyingParty) => Promise<RouteReply>,
): Promise<RouteReply> {
  const party = relyingParty(settings.publicUrl, origin);
  if (party !== undefined) return work(party);
  const reason = "passkeys need a name: set publicUrl, or open the page as localhost";
  return { status: 409, body: { problem: "no-passkeys-here", reason } };
}
