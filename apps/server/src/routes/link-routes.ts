import {
  caseQuerySchema,
  type LinkRequest,
  linkAnswerSchema,
  linkRequestSchema,
} from "@steelyard/records/department";
import type { Route, RouteReply } from "./route.ts";
import { personOf } from "./who.ts";

/** A site that has not asked for links has none. */
const off: RouteReply = { status: 404, body: { problem: "local-link-off" } };
const unknownCase: RouteReply = { status: 404, body: { problem: "unknown-case" } };

export const linkRoute: Route = {
  method: "GET",
  url: "/api/case/link",
  roles: ["clinician"],
  query: caseQuerySchema,
  replies: { 200: linkAnswerSchema },
  handle: async ({ principal, query }, { store, settings }) => {
    if (!settings.localLink) return off;
    const { site, actor } = personOf(principal);
    const { caseId } = query as { readonly caseId: string };
    const sealed = await store.readSealedLink({ site, actor, caseId });
    return { status: 200, body: sealed === undefined ? {} : { sealed } };
  },
};

/** Takes what was sealed on the page; no passphrase and no readable text ever comes here. */
export const putLinkRoute: Route = {
  method: "POST",
  url: "/api/case/link",
  roles: ["clinician"],
  body: linkRequestSchema,
  replies: { 200: linkAnswerSchema },
  handle: async ({ principal, body }, { store, settings }) => {
    if (!settings.localLink) return off;
    const { site, actor } = personOf(principal);
    const { caseId, sealed } = body as LinkRequest;
    if (!(await store.putSealedLink({ site, actor, caseId, sealed }))) return unknownCase;
    return { status: 200, body: sealed === null ? {} : { sealed } };
  },
};
