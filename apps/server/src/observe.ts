import type { FastifyInstance } from "fastify";
import type { Metrics } from "./metrics.ts";

/** One line and one measure for each request to the records: route, status, time, who; nothing of a child, no token, no query. */
export function observe(server: FastifyInstance, metrics: Metrics): void {
  server.addHook("onResponse", async (request, reply) => {
    const route = request.routeOptions.url;
    if (route === undefined || request.principal === undefined) return;
    const { principal } = request;
    const who =
      principal.kind === "anyone"
        ? { kind: "anyone" }
        : { kind: principal.kind, id: principal.id, site: principal.site };
    const ms = Math.round(reply.elapsedTime);
    metrics.seconds.observe({ route, status: String(reply.statusCode) }, reply.elapsedTime / 1_000);
    request.log.info(
      { route, method: request.method, status: reply.statusCode, ms, who, ip: request.ip },
      "answered",
    );
  });
}
