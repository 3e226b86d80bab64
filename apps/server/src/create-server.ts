import { relative, sep } from "node:path";
import helmet from "@fastify/helmet";
import serveStatic from "@fastify/static";
import fastify, { type FastifyInstance, type FastifyReply } from "fastify";
import { cacheControl } from "./cache-control.ts";
import { permissionsPolicy, securityHeaders } from "./security-headers.ts";

/** Makes the server of the built page in `pageDir` (an absolute path); the caller starts and stops it. */
export async function createServer({ pageDir }: { readonly pageDir: string }): Promise<FastifyInstance> {
  const server = fastify({
    // One line on start is all this server says; a failed request is answered, not logged.
    logger: false,
    // A path that cannot be decoded is a page that does not exist, not a server error.
    frameworkErrors: (_error, _request, reply) => {
      (reply as FastifyReply).code(400).type("text/plain").send("Bad request\n");
    },
    // Stopping must not wait for browsers that keep their connection open.
    forceCloseConnections: true,
  });

  await server.register(helmet, securityHeaders);
  server.addHook("onRequest", async (request, reply) => {
    reply.header("permissions-policy", permissionsPolicy);
    if (request.method !== "GET" && request.method !== "HEAD") {
      return reply.code(405).header("allow", "GET, HEAD").type("text/plain").send("Method not allowed\n");
    }
  });

  await server.register(serveStatic, {
    root: pageDir,
    cacheControl: false,
    dotfiles: "ignore",
    setHeaders: (reply, path) => {
      reply.header("cache-control", cacheControl(`/${relative(pageDir, path).split(sep).join("/")}`));
    },
  });

  server.setNotFoundHandler((_request, reply) =>
    reply.code(404).header("cache-control", "no-cache").type("text/plain").send("Not found\n"),
  );
  server.setErrorHandler((error: { statusCode?: number }, _request, reply) => {
    const status = error.statusCode ?? 500;
    return reply
      .code(status)
      .type("text/plain")
      .send(status < 500 ? "Bad request\n" : "Server error\n");
  });
  return server;
}
