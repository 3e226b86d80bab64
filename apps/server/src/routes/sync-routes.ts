import type { Principal } from "@steelyard/records/people";
import {
  documentsInForceSchema,
  type HeldDocuments,
  heldDocumentsSchema,
  type PullRequest,
  type PushRequest,
  pullAnswerSchema,
  pullQuerySchema,
  pushAnswerSchema,
  pushRequestSchema,
} from "@steelyard/records/sync";
import { acceptPush, answerDocuments, answerPull, type Sender } from "@steelyard/records/sync-server";
import type { Route } from "./route.ts";

export const pushRoute: Route = {
  method: "POST",
  url: "/api/sync/push",
  roles: ["device"],
  body: pushRequestSchema,
  replies: { 200: pushAnswerSchema },
  handle: async ({ principal, body }, { store, metrics }) => {
    const answer = await acceptPush(store, senderOf(principal), body as PushRequest);
    metrics.acknowledged.inc(answer.acknowledged.length);
    for (const { reason } of answer.refused) metrics.refused.inc({ reason: reason.type });
    return { status: 200, body: answer };
  },
};

export const pullRoute: Route = {
  method: "GET",
  url: "/api/sync/pull",
  roles: ["device"],
  query: pullQuerySchema,
  replies: { 200: pullAnswerSchema },
  handle: async ({ principal, query }, { store }) => ({
    status: 200,
    body: await answerPull(store, senderOf(principal), query as PullRequest),
  }),
};

/** What the site computes by: a device that holds it gets nothing but the word that it does. */
export const syncDocumentsRoute: Route = {
  method: "GET",
  url: "/api/sync/documents",
  roles: ["device"],
  query: heldDocumentsSchema,
  replies: { 200: documentsInForceSchema },
  handle: async ({ principal, query }, { store }) => ({
    status: 200,
    body: await answerDocuments(store, senderOf(principal), query as HeldDocuments),
  }),
};

function senderOf(principal: Principal): Sender {
  if (principal.kind !== "device") throw new TypeError("Cannot sync as the principal must be a device");
  return { site: principal.site, device: principal.id };
}
