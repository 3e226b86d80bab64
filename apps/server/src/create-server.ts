import { relative, sep } from "node:path";
import helmet from "@fastify/helmet";
import serveStatic from "@fastify/static";
import fastify, {
  type FastifyInstance,
  type FastifyReply,
  type FastifyServerOptions,
  LogController,
} from "fastify";
import { answerError } from "./answer-error.ts";
import { cacheControl } from "./cache-control.ts";
import { observe } from "./observe.ts";
import { registerRoutes, sendProblem } from "./routes/register-routes.ts";
import type { RecordsService } from "./routes/route.ts";
import { permissionsPolicy, securityHeaders } from "./security-headers.ts";

export interface ServerOptions {
  /** Folder of the built page, an absolute path. */
  readonly pageDir: string;
  /** Absent: the page alone, which keeps its cases on the device. */
  readonly records?: RecordsService;
  readonly https?: { readonly cert: string; readonly key: string };
  /** Absent: nothing is logged. */
  readonly logger?: FastifyServerOptions["logger"];
}

/** Makes the server of the page, and of the records where it is given them; the caller starts and stops it. */
export async function createServer({
  pageDir,
  records,
  https,
  logger = false,
}: ServerOptions): Promise<FastifyInstance> {
  const options: FastifyServerOptions = {
    logger,
    // What is logged of a request is in `observe`: never its body, its query or its token.
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy:
      records === undefined || records.settings.trustProxy.length === 0
        ? false
        : [...records.settings.trustProxy],
    // A path that cannot be decoded is a page that does not exist, not a server error.
    frameworkErrors: (_error, _request, reply) => {
      (reply as FastifyReply).code(400).type("text/plain").send("Bad request\n");
    },
    // Stopping waits for answers that are on their way, and not for browsers that keep their connection open.
    forceCloseConnections: "idle",
    // A client that sends a byte now and then holds no connection for ever.
    requestTimeout: 30_000,
  };
  const server = (
    https === undefined ? fastify(options) : fastify({ ...options, https } as FastifyServerOptions)
  ) as FastifyInstance;

  // By this server or by the proxy in front of it.
  const isEncrypted = https !== undefined || options.trustProxy !== false;
  await server.register(helmet, securityHeaders({ https: isEncrypted }));
  server.addHook("onRequest", async (request, reply) => {
    reply.header("permissions-policy", permissionsPolicy);
    if (isApi(request.url)) return;
    if (request.method !== "GET" && request.method !== "HEAD") {
      return reply.code(405).header("allow", "GET, HEAD").type("text/plain").send("Method not allowed\n");
    }
  });

  // An answer that was on its way at the signal to stop is the last of its connection; else the client could keep it open.
  let isClosing = false;
  server.addHook("preClose", async () => {
    isClosing = true;
  });
  server.addHook("onSend", async (_request, reply) => {
    if (isClosing) reply.header("connection", "close");
  });

  // Before the routes: one that is there already keeps the handler it had.
  server.setErrorHandler((error, request, reply) => answerError({ error, request, reply, records }));
  if (records !== undefined) {
    observe(server, records.metrics);
    await registerRoutes(server, records);
  }
  await server.register(serveStatic, {
    root: pageDir,
    cacheControl: false,
    dotfiles: "ignore",
    setHeaders: (reply, path) => {
      reply.header("cache-control", cacheControl(`/${relative(pageDir, path).split(sep).join("/")}`));
    },
  });

  // The page of the department; without records it says that there are none.
  server.get("/department", (_request, reply) => reply.sendFile("department.html"));

  server.setNotFoundHandler((request, reply) =>
    isApi(request.url)
      ? sendProblem(reply, 404, { problem: "not-found" })
      : reply.code(404).header("cache-control", "no-cache").type("text/plain").send("Not found\n"),
  );
  return server;
}

function isApi(url: string): boolean {
  return url.startsWith("/api/");
}
