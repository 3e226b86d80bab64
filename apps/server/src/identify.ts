import type { Session } from "@steelyard/records/accounts";
import type { Principal } from "@steelyard/records/people";
import type { FastifyRequest } from "fastify";
import type { RouteService } from "./routes/route.ts";
import { ownOrigin } from "./sessions/own-origin.ts";
import { readSessionCookie } from "./sessions/session-cookie.ts";

declare module "fastify" {
  interface FastifyRequest {
    principal?: Principal;
    /** Of the person that the principal is. */
    session?: Session | undefined;
  }
}

/**
 * Who asks, by what the request proves and as the store has it at this moment: a device by its token, a person by a session.
 * A request that shows a token is a device's or nobody's, whatever cookie is with it.
 */
export async function identify(
  request: FastifyRequest,
  { store, accounts, settings }: RouteService,
): Promise<Principal> {
  const { authorization, cookie } = request.headers;
  if (authorization !== undefined) {
    const token = /^Bearer ([A-Za-z0-9_-]{32,200})$/.exec(authorization)?.[1];
    const device = token === undefined ? undefined : await store.findDevice(token);
    if (device === undefined) return { kind: "anyone" };
    return { kind: "device", id: device.id, site: device.site, roles: ["device"] };
  }
  const token = readSessionCookie(cookie, { secure: ownOrigin(settings, request).startsWith("https:") });
  const session = token === undefined ? undefined : await accounts.identify(token);
  if (session === undefined) return { kind: "anyone" };
  request.session = session;
  const { person } = session;
  return { kind: "person", id: person.id, site: person.site, roles: person.roles };
}
