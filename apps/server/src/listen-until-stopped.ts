import type { FastifyInstance } from "fastify";

export interface ListenOptions {
  readonly host: string;
  readonly port: number;
  /** The one line that says where it listens. */
  readonly describe: (address: string) => string;
  /** Called at the signal to stop, before answers on their way are waited for. */
  readonly onStopping?: () => void;
}

/** Answers on their way get this long to be sent. */
const STOP_WITHIN_MS = 10_000;

/** Serves until SIGINT or SIGTERM and stops in order; gives the exit status. */
export async function listenUntilStopped(
  server: FastifyInstance,
  { host, port, describe, onStopping }: ListenOptions,
): Promise<number> {
  try {
    process.stdout.write(`${describe(await server.listen({ host, port }))}\n`);
  } catch (error) {
    process.stderr.write(`${whyNotListening(error, port)}\n`);
    await server.close();
    return 1;
  }
  await new Promise<void>((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop());
  });
  onStopping?.();
  const tooLong = setTimeout(() => server.server.closeAllConnections(), STOP_WITHIN_MS);
  await server.close();
  clearTimeout(tooLong);
  return 0;
}

function whyNotListening(error: unknown, port: number): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "EADDRINUSE")
    return `Port ${port} is taken by another program. Choose another: npm start -- --port ${port === 65535 ? port - 1 : port + 1}`;
  if (code === "EACCES") return `Port ${port} needs special rights. Choose one above 1023.`;
  return `Cannot listen on port ${port}: ${error instanceof Error ? error.message : String(error)}`;
}
