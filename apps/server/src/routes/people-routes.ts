import type { Accounts } from "@steelyard/records/accounts";
import {
  type ChangePersonRequest,
  changePersonAnswerSchema,
  changePersonRequestSchema,
  type InviteRequest,
  inviteAnswerSchema,
  inviteRequestSchema,
  type PersonEntry,
  type PersonRole,
  peopleAnswerSchema,
} from "@steelyard/records/department";
import type { Route, RouteReply } from "./route.ts";
import { personOf } from "./who.ts";

export const peopleRoute: Route = {
  method: "GET",
  url: "/api/people",
  roles: ["administrator"],
  replies: { 200: peopleAnswerSchema },
  handle: async ({ principal }, { accounts }) => ({
    status: 200,
    body: { people: (await accounts.list(personOf(principal).site)).map(entryOf) },
  }),
};

export const inviteRoute: Route = {
  method: "POST",
  url: "/api/invitations",
  roles: ["administrator"],
  body: inviteRequestSchema,
  replies: { 200: inviteAnswerSchema },
  handle: async ({ principal, body }, { accounts }) => {
    const { code, expiresAt } = await accounts.invite({ ...personOf(principal), ...(body as InviteRequest) });
    return { status: 200, body: { code, expiresAt } };
  },
};

/** Roles, state, a shut login opened, a new invitation: what is asked for is done in this order, up to the first that cannot be. */
export const changePersonRoute: Route = {
  method: "POST",
  url: "/api/people/change",
  roles: ["administrator"],
  body: changePersonRequestSchema,
  replies: { 200: changePersonAnswerSchema },
  handle: async ({ principal, body }, { accounts }) => {
    const { id, roles, state, unlock, newInvitation } = body as ChangePersonRequest;
    const whom = { ...personOf(principal), id };
    if (roles !== undefined || state !== undefined) {
      const changed = await accounts.change({ ...whom, roles, state });
      if (!changed.ok) return refusal(changed.error.type);
    }
    if (unlock) {
      const unlocked = await accounts.unlock(whom);
      if (!unlocked.ok) return refusal(unlocked.error.type);
    }
    let invitation: { code: string; expiresAt: string } | undefined;
    if (newInvitation) {
      const reset = await accounts.reset({ ...whom, evenLast: false });
      if (!reset.ok) return refusal(reset.error.type);
      const { code, expiresAt } = reset.value;
      invitation = { code, expiresAt };
    }
    const person = (await accounts.list(whom.site)).find((entry) => entry.id === id);
    if (person === undefined) return refusal("unknown-person");
    return { status: 200, body: { person: entryOf(person), ...invitation } };
  },
};

function entryOf(person: Awaited<ReturnType<Accounts["list"]>>[number]): PersonEntry {
  const { id, name, login, roles, state, locked, lastSignInAt, passkeys } = person;
  return {
    id,
    name,
    ...(login === undefined ? {} : { login }),
    roles: roles as readonly PersonRole[],
    state: state === "active" && locked ? "locked" : state,
    ...(lastSignInAt === undefined ? {} : { lastSignInAt }),
    passkeys,
  };
}

function refusal(problem: "unknown-person" | "last-administrator"): RouteReply {
  return { status: problem === "unknown-person" ? 404 : 409, body: { problem } };
}
