import { spawn } from "node:child_process";
import { join } from "node:path";
import type { Command } from "commander";
import { EXIT_STATUS_HELP } from "../help-text.ts";
import type { RecordsOptions } from "./open-records.ts";

/** The server is a program of its own, and neither app imports the other. */
const server = join(import.meta.dirname, "../../../server/src/main.ts");

/** `steelyard serve --settings settings.json`. */
export function defineServeCommand(command: Command): void {
  command
    .option("--settings <file.json>", "the settings of the server (docs/operations.md)")
    .option("--port <number>", "the port to listen on, in place of that of the settings")
    .addHelpText(
      "after",
      `\nServes the page and keeps the cases of a department. Without settings: one SQLite file in this folder, reached\nfrom this machine only. Ctrl+C stops it once what is on its way is answered.\n\n${EXIT_STATUS_HELP}`,
    )
    .action(serve);
}

async function serve({ settings, port }: RecordsOptions & { readonly port?: string }): Promise<void> {
  const args = [
    "--records",
    ...(settings === undefined ? [] : ["--settings", settings]),
    ...(port === undefined ? [] : ["--port", port]),
  ];
  const child = spawn(process.execPath, [server, ...args], { stdio: "inherit" });
  // Ctrl+C reaches both; this one waits for the server to have stopped.
  const pass = (signal: NodeJS.Signals): boolean => child.kill(signal);
  process.on("SIGTERM", pass).on("SIGINT", () => {});
  await new Promise<void>((resolve, reject) => {
    child.on("error", reject);
    child.on("exit", (code) => {
      process.exitCode = code ?? 1;
      resolve();
    });
  });
}
