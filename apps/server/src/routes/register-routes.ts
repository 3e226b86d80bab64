import rateLimit from "@fastify/rate-limit";
import { hasRole } from "@steelyard/records/people";
import { syncProtocol } from "@steelyard/records/sync";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import * as v from "valibot";
import { identify } from "../identify.ts";
import { ownOrigin } from "../sessions/own-origin.ts";
import { refuseForgery } from "../sessions/refuse-forgery.ts";
import { withAccounts } from "../sessions/with-accounts.ts";
import { type Problem, problemSchema } from "./problem.ts";
import type { RecordsService, Route, RouteReply, RouteService } from "./route.ts";
import { routeTable } from "./route-table.ts";

/** Puts the table of routes into a server: who may, what may come in, what may go out, how often. */
export async function registerRoutes(server: FastifyInstance, records: RecordsService): Promise<void> {
  const service = withAccounts(records);
  // JSON is all that is read: a form of another page can send plain text without asking, and JSON it cannot.
  server.removeContentTypeParser("text/plain");
  const { requestsPerMinute } = service.settings.limits;
  await server.register(rateLimit, {
    global: false,
    // After the principal is known and before the body is read.
    hook: "preParsing",
    max: requestsPerMinute,
    timeWindow: "1 minute",
    keyGenerator: (request) => {
      const principal = request.principal ?? { kind: "anyone" };
      return principal.kind === "anyone" ? `ip ${request.ip}` : `${principal.kind} ${principal.id}`;
    },
  });
  server.decorateRequest("principal");
  server.decorateRequest("session");
  for (const route of routeTable) {
    server.route({
      method: route.method,
      url: route.url,
      bodyLimit: Math.max(route.bodyBytes ?? 0, service.settings.limits.bodyBytes),
      config: {
        rateLimit: route.perMinute === undefined ? {} : { max: Math.min(route.perMinute, requestsPerMinute) },
      },
      onRequest: async (request) => {
        request.principal = await identify(request, service);
      },
      preValidation: async (request, reply) => {
        const refusal = refuse(route, request) ?? refuseForgery(service.settings, request);
        if (refusal !== undefined) return send(reply, route, refusal);
      },
      handler: async (request, reply) => {
        const given = read(route, request, service);
        return send(reply, route, "problem" in given ? given.problem : await route.handle(given, service));
      },
    });
  }
}

function refuse(route: Route, { principal = { kind: "anyone" } }: FastifyRequest): RouteReply | undefined {
  if (route.roles === "anyone" || hasRole(principal, route.roles)) return undefined;
  if (principal.kind !== "anyone") return { status: 403, body: { problem: "not-allowed" } };
  return route.roles.includes("device")
    ? { status: 401, body: { problem: "not-enrolled" }, headers: { "www-authenticate": "Bearer" } }
    : { status: 401, body: { problem: "signed-out" }, headers: { "www-authenticate": "Session" } };
}

/** What the schemas of the route make of the request, or the answer that says what is wrong with it. */
function read(
  route: Route,
  request: FastifyRequest,
  { settings }: RouteService,
): Parameters<Route["handle"]>[0] | { readonly problem: RouteReply } {
  const asked = (request.body ?? request.query) as { readonly protocol?: unknown } | null;
  if (route.url.startsWith("/api/sync/") && Number(asked?.protocol) !== syncProtocol) {
    const reason = `this server speaks protocol ${syncProtocol}`;
    return { problem: { status: 400, body: { problem: "unknown-protocol", reason } } };
  }
  const parts: { body?: unknown; query?: unknown } = {};
  for (const part of ["body", "query"] as const) {
    const schema = route[part];
    if (schema === undefined) continue;
    // A list would pass for an object without words.
    if (part === "body" && (typeof request.body !== "object" || Array.isArray(request.body))) {
      return { problem: { status: 400, body: { problem: "malformed", reason: "body: must be an object" } } };
    }
    const result = v.safeParse(schema, part === "body" ? request.body : { ...(request.query as object) });
    if (!result.success) {
      const [issue] = result.issues;
      const reason = `${part} ${v.getDotPath(issue) ?? ""}: ${issue.message}`.slice(0, 300);
      return { problem: { status: 400, body: { problem: "malformed", reason } } };
    }
    parts[part] = result.output;
  }
  return {
    principal: request.principal ?? { kind: "anyone" },
    body: parts.body,
    query: parts.query,
    ip: request.ip,
    session: request.session,
    origin: ownOrigin(settings, request),
  };
}

/** Throws where an answer is not what the table promises: an error then, and not a leak. */
function send(reply: FastifyReply, route: Route, { status, body, headers }: RouteReply): FastifyReply {
  const schema = route.replies[status] ?? (status >= 400 ? problemSchema : undefined);
  if (schema === undefined) throw new TypeError(`${route.url} has no answer for ${status}`);
  const checked = v.parse(schema, body);
  reply.code(status).headers({ "cache-control": "no-store", ...headers });
  if (typeof checked === "string") return reply.send(checked);
  return reply.type("application/json").send(JSON.stringify(checked));
}

export function sendProblem(reply: FastifyReply, status: number, problem: Problem): FastifyReply {
  const checked = v.parse(problemSchema, problem);
  return reply
    .code(status)
    .header("cache-control", "no-store")
    .type("application/json")
    .send(JSON.stringify(checked));
}
