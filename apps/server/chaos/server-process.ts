import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";

/** A running server that can be killed. */
export interface ServerProcess {
  readonly url: string;
  readonly pid: number;
  readonly kill: (signal: "SIGKILL" | "SIGTERM") => Promise<void>;
}

const main = join(import.meta.dirname, "serve.ts");

/** Starts the server of the records in a process of its own on a free port; resolves when it listens. */
export async function startServer(env: Readonly<Record<string, string>>): Promise<ServerProcess> {
  const child: ChildProcess = spawn(process.execPath, [main], {
    env: { ...process.env, STEELYARD_PORT: "0", STEELYARD_LOG: "silent", ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const exited = once(child, "exit");
  let said = "";
  const listening = new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      said += chunk;
      const url = /http:\/\/[^\s]+/.exec(said)?.[0];
      if (url !== undefined) resolve(url);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", (chunk: Buffer) => {
      said += chunk;
    });
    child.on("exit", (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
  const url = await listening;
  return {
    url,
    pid: child.pid ?? 0,
    kill: async (signal) => {
      if (child.exitCode === null && child.signalCode === null) child.kill(signal);
      await exited;
    },
  };
}
