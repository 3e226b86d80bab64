import { existsSync } from "node:fs";
import { join } from "node:path";
import { createServer } from "./create-server.ts";
import { listenUntilStopped } from "./listen-until-stopped.ts";
import { readOptions, usage } from "./read-options.ts";
import { serveRecords } from "./serve-records.ts";

const pageDir = join(import.meta.dirname, "../../web/dist");
const options = readOptions({ args: process.argv.slice(2), env: process.env });

async function run(): Promise<number> {
  if (options.type === "help") {
    process.stdout.write(usage);
    return 0;
  }
  if (options.type === "wrong-usage") {
    process.stderr.write(`${options.message}\n\n${usage}`);
    return 2;
  }
  if (!existsSync(join(pageDir, "index.html"))) {
    process.stderr.write("The page is not built yet. Build it first: npm run build\n");
    return 1;
  }
  if (options.type === "serve-records") return serveRecords({ ...options, pageDir, env: process.env });
  const server = await createServer({ pageDir });
  return listenUntilStopped(server, {
    host: "127.0.0.1",
    port: options.port,
    describe: (address) => `Steelyard Bedside: ${address}`,
  });
}

process.exitCode = await run();
