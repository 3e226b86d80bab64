#!/usr/bin/env node
// Plain JavaScript that any Node can read: finds a Node of 24 or later and hands over to src/main.ts, which needs it.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import module from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const NEEDED = 24;
const handedOver = "STEELYARD_HANDED_OVER";

if (Number.parseInt(process.versions.node, 10) >= NEEDED) {
  // What Node makes of the sources is kept for the next call, which then starts in two thirds of the time.
  module.enableCompileCache();
  await import("../src/main.ts");
} else {
  handOver();
}

/** Runs the same command with the project's own Node and ends with its status. */
function handOver() {
  const own =
    process.env[handedOver] === undefined ? findOwnNode(dirname(fileURLToPath(import.meta.url))) : undefined;
  if (own === undefined) {
    process.stderr.write(
      `steelyard: needs Node ${NEEDED} or later, and this is Node ${process.versions.node}. ` +
        "Run `npm install` in the project, which brings its own, or install a newer Node.\n",
    );
    process.exitCode = 1;
    return;
  }
  const { status, signal, error } = spawnSync(own, process.argv.slice(1), {
    stdio: "inherit",
    env: { ...process.env, [handedOver]: "1" },
  });
  if (error) process.stderr.write(`steelyard: cannot run ${own}: ${error.message}\n`);
  if (signal) process.kill(process.pid, signal);
  process.exitCode = status ?? 1;
}

/** The Node that `npm install` put beside the project, looked for upwards from here. */
function findOwnNode(folder) {
  for (const name of ["node", "node.exe"]) {
    const candidate = join(folder, "node_modules", "node", "bin", name);
    if (existsSync(candidate)) return candidate;
  }
  const parent = dirname(folder);
  return parent === folder ? undefined : findOwnNode(parent);
}
