import {
  type AddDocumentRequest,
  addDocumentAnswerSchema,
  addDocumentRequestSchema,
  type DocumentKind,
  documentAnswerSchema,
  documentQuerySchema,
  documentsAnswerSchema,
  documentsQuerySchema,
  faultyDocumentSchema,
  publishDocumentRequestSchema,
  type SignDocumentRequest,
  signDocumentRequestSchema,
  wholeDocumentSchema,
} from "@steelyard/records/department";
import type { Role } from "@steelyard/records/people";
import type { DocumentIssue, Store } from "@steelyard/records/store";
import type { Route, RouteReply } from "./route.ts";
import { refusal as refusedPassword } from "./session-routes.ts";
import { personOf } from "./who.ts";

const readers: readonly Role[] = ["reviewer", "administrator", "clinician"];
/** A whole formulary is over a megabyte, and more as a text inside JSON. */
const DOCUMENT_BYTES = 4_194_304;
/** Faults in one answer; whoever has more begins with these. */
const MOST_FAULTS = 200;

export const documentsRoute: Route = {
  method: "GET",
  url: "/api/documents",
  roles: readers,
  query: documentsQuerySchema,
  replies: { 200: documentsAnswerSchema },
  handle: async ({ principal, query }, { store }) => ({
    status: 200,
    body: await store.listDocuments({
      site: personOf(principal).site,
      kind: (query as { readonly kind: DocumentKind }).kind,
    }),
  }),
};

export const documentRoute: Route = {
  method: "GET",
  url: "/api/document",
  roles: readers,
  query: documentQuerySchema,
  replies: { 200: wholeDocumentSchema },
  handle: async ({ principal, query }, { store }) => {
    const { sha256 } = query as { readonly sha256: string };
    const found = await store.findDocument({ site: personOf(principal).site, sha256 });
    return found === undefined ? refused({ type: "unknown-document" }) : { status: 200, body: found };
  },
};

export const addDocumentRoute: Route = {
  method: "POST",
  url: "/api/documents",
  roles: readers,
  perMinute: 20,
  bodyBytes: DOCUMENT_BYTES,
  body: addDocumentRequestSchema,
  replies: { 200: addDocumentAnswerSchema, 422: faultyDocumentSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const added = await store.addDocument({ site, actor, ...(body as AddDocumentRequest) });
    if (!added.ok) return refused(added.error);
    const { sha256, remarks } = added.value;
    return { status: 200, body: { sha256, faults: remarks.slice(0, MOST_FAULTS) } };
  },
};

/** The password once more: whoever finds a page open does not sign. */
export const signDocumentRoute: Route = {
  method: "POST",
  url: "/api/documents/sign",
  roles: ["reviewer"],
  perMinute: 10,
  body: signDocumentRequestSchema,
  replies: { 200: documentAnswerSchema },
  handle: async ({ principal, body, ip }, { store, accounts }) => {
    const { id, site, actor } = personOf(principal);
    const { sha256, password, registration } = body as SignDocumentRequest;
    const confirmed = await accounts.confirmPassword({ person: id, password, address: ip });
    if (!confirmed.ok) return refusedPassword(confirmed.error);
    const signed = await store.signDocument({ site, actor, sha256, registration });
    return signed.ok ? now(store, { site, sha256 }) : refused(signed.error);
  },
};

/** Rolling back is publishing an earlier one. */
export const publishDocumentRoute: Route = {
  method: "POST",
  url: "/api/documents/publish",
  roles: ["reviewer", "administrator"],
  body: publishDocumentRequestSchema,
  replies: { 200: documentAnswerSchema, 422: faultyDocumentSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const { sha256 } = body as { readonly sha256: string };
    const published = await store.publishDocument({ site, actor, sha256 });
    return published.ok ? now(store, { site, sha256 }) : refused(published.error);
  },
};

async function now(
  store: Store,
  of: { readonly site: string; readonly sha256: string },
): Promise<RouteReply> {
  const found = await store.findDocument(of);
  return found === undefined
    ? refused({ type: "unknown-document" })
    : { status: 200, body: { document: found.document } };
}

function refused(issue: DocumentIssue): RouteReply {
  switch (issue.type) {
    case "unknown-document":
      return { status: 404, body: { problem: issue.type } };
    case "not-a-reviewer":
      return { status: 403, body: { problem: issue.type } };
    case "signed-already":
    case "own-work":
      return { status: 409, body: { problem: issue.type } };
    case "needs-signatures":
      return {
        status: 409,
        body: { problem: issue.type, reason: `${issue.have} of ${issue.need} signatures` },
      };
    case "faulty-document": {
      const { faults } = issue;
      const reason = `${faults.length} ${faults.length === 1 ? "fault" : "faults"}`;
      return { status: 422, body: { problem: issue.type, reason, faults: faults.slice(0, MOST_FAULTS) } };
    }
  }
}
