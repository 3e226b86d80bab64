import { timingSafeEqual } from "node:crypto";
import { csrfOf } from "@steelyard/records/accounts";
import type { Settings } from "@steelyard/records/settings";
import type { FastifyRequest } from "fastify";
import type { RouteReply } from "../routes/route.ts";
import { ownOrigin } from "./own-origin.ts";

/**
 * The answer to a POST that another page may have made; nothing where it is the own page's, or a program's without a
 * session. A device proves itself by a header that no browser adds by itself, so it needs no more.
 */
export function refuseForgery(settings: Settings, request: FastifyRequest): RouteReply | undefined {
  if (request.method !== "POST" || request.principal?.kind === "device") return undefined;
  const { origin, "sec-fetch-site": from, "x-steelyard-csrf": csrf } = request.headers;
  const elsewhere = from !== undefined && from !== "same-origin" && from !== "none";
  if (elsewhere || (origin !== undefined && origin !== ownOrigin(settings, request))) {
    return { status: 403, body: { problem: "wrong-origin" } };
  }
  if (request.session === undefined) return undefined;
  return isSame(csrf, csrfOf(request.session.token))
    ? undefined
    : { status: 403, body: { problem: "wrong-csrf" } };
}

function isSame(given: string | readonly string[] | undefined, expected: string): boolean {
  if (typeof given !== "string" || given.length !== expected.length) return false;
  return timingSafeEqual(Buffer.from(given.padEnd(64), "latin1"), Buffer.from(expected.padEnd(64), "latin1"));
}
