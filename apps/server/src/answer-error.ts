import type { FastifyReply, FastifyRequest } from "fastify";
import { sendProblem } from "./routes/register-routes.ts";
import type { RecordsService } from "./routes/route.ts";

/** How long a device may wait before it asks a server whose store is in trouble again. */
const RETRY_S = 30;

const problems: Readonly<Record<number, string>> = {
  400: "malformed",
  408: "too-slow",
  413: "too-large",
  415: "unknown-media-type",
  429: "too-many",
  503: "busy",
};

interface Failure {
  readonly error: unknown;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
  readonly records: RecordsService | undefined;
}

/** Says what went wrong in one word and nothing of the inside; the log has the rest. */
export function answerError({ error, request, reply, records }: Failure): FastifyReply {
  const trouble = records?.store.engine.explainError(error);
  if (records !== undefined && trouble !== undefined) {
    records.metrics.storeTrouble.inc({ trouble });
    request.log.error({ route: request.routeOptions.url, trouble }, "The store cannot serve");
    reply.header("retry-after", String(RETRY_S));
    return sendProblem(reply, 503, { problem: `store-${trouble}` });
  }
  const status = (error as { readonly statusCode?: number }).statusCode ?? 500;
  if (status >= 500)
    request.log.error({ route: request.routeOptions.url, fault: nameOf(error) }, "A fault of the server");
  if (request.url.startsWith("/api/")) {
    return sendProblem(reply, status, {
      problem: problems[status] ?? (status < 500 ? "refused" : "server-fault"),
    });
  }
  return reply
    .code(status)
    .type("text/plain")
    .send(status < 500 ? "Bad request\n" : "Server error\n");
}

/** Messages of a schema or of an engine may hold values of a case; the kind and the place in the code do not. */
function nameOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error;
  const place = error.stack?.split("\n").find((line) => line.trimStart().startsWith("at ")) ?? "";
  return `${error.name} ${place.trim()}`;
}
