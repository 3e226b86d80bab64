import type { FastifyInstance } from "fastify";

export interface ListenOptions {
  readonly host: string;
  readonly port: number;
  /** The one line that says where it listens. */
  readonly describe: (address: string) => string;
  /** Called at the signal to stop, before answers on their way are waited for. */
  readonly onStopping?: () => void;
  /** When to stop; at SIGINT or SIGTERM without it. */
  readonly until?: Promise<void>;
  /** Answers on their way get this long to be sent. */
  readonly stopWithinMs?: number;
}

const STOP_WITHIN_MS = 10_000;

/**
 * Serves until it is told to stop and stops in order: no new connection, 503 to a request on an open one, and answers on
 * their way are sent. Gives the exit status.
 */
export async function listenUntilStopped(
  server: FastifyInstance,
  { host, port, describe, onStopping, until = signalToStop(), stopWithinMs = STOP_WITHIN_MS }: ListenOptions,
): Promise<number> {
  try {
    process.stdout.write(`${describe(await server.listen({ host, port }))}\n`);
  } catch (error) {
    process.stderr.write(`${whyNotListening(error, port)}\n`);
    await server.close();
    return 1;
  }
  await until;
  onStopping?.();
  const tooLong = setTimeout(() => server.server.closeAllConnections(), stopWithinMs);
  await server.close();
  clearTimeout(tooLong);
  return 0;
}

function signalToStop(): Promise<void> {
  return new Promise((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop());
  });
}

function whyNotListening(error: unknown, port: number): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "EADDRINUSE")
    return `Port ${port} is taken by another program. Choose another: npm start -- --port ${port === 65535 ? port - 1 : port + 1}`;
  if (code === "EACCES") return `Port ${port} needs special rights. Choose one above 1023.`;
  return `Cannot listen on port ${port}: ${error instanceof Error ? error.message : String(error)}`;
}
