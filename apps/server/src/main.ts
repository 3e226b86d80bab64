import { existsSync } from "node:fs";
import { join } from "node:path";
import { createServer } from "./create-server.ts";
import { readOptions, usage } from "./read-options.ts";

const pageDir = join(import.meta.dirname, "../../web/dist");

async function serve(port: number): Promise<number> {
  if (!existsSync(join(pageDir, "index.html"))) {
    process.stderr.write("The page is not built yet. Build it first: npm run build\n");
    return 1;
  }
  const server = await createServer({ pageDir });
  try {
    process.stdout.write(`Steelyard Bedside: ${await server.listen({ host: "127.0.0.1", port })}\n`);
  } catch (error) {
    process.stderr.write(`${whyNotListening(error, port)}\n`);
    return 1;
  }
  await new Promise<void>((stop) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop());
  });
  await server.close();
  return 0;
}

function whyNotListening(error: unknown, port: number): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "EADDRINUSE")
    return `Port ${port} is taken by another program. Choose another: npm start -- --port ${port === 65535 ? port - 1 : port + 1}`;
  if (code === "EACCES") return `Port ${port} needs special rights. Choose one above 1023.`;
  return `Cannot listen on port ${port}: ${error instanceof Error ? error.message : String(error)}`;
}

const options = readOptions({ args: process.argv.slice(2), env: process.env });
if (options.type === "help") {
  process.stdout.write(usage);
} else if (options.type === "wrong-usage") {
  process.stderr.write(`${options.message}\n\n${usage}`);
  process.exitCode = 2;
} else {
  process.exitCode = await serve(options.port);
}
