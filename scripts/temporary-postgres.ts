import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { chownSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findPostgres } from "./find-postgres.ts";

export interface TemporaryPostgres {
  /** Of a new empty database. */
  readonly createDatabase: (name: string) => string;
  /** SIGKILL to the whole of it, as a machine that loses its power. Resolves when nothing of it runs. */
  readonly kill: () => Promise<void>;
  /** Starts it again on the same folder. */
  readonly start: () => Promise<void>;
  /** Ends it and removes the folder. */
  readonly stop: () => Promise<void>;
  /** Of its postmaster, while it runs. */
  readonly pid: () => number;
}

export interface TemporaryPostgresOptions {
  /** `false` leaves out waiting for the disk. */
  readonly durable: boolean;
  /** Where its folder is made; the system's place for temporary files without it. */
  readonly parent?: string;
  /** More of its settings, as `shared_buffers=1GB`. */
  readonly settings?: readonly string[];
  /** More words for `initdb`. */
  readonly initdb?: readonly string[];
}

const user = "steelyard";

/**
 * A PostgreSQL of its own in a temporary folder, reached by a socket in that folder only, run by an unprivileged user;
 * `undefined` where none is installed.
 */
export async function startTemporaryPostgres({
  durable,
  parent = tmpdir(),
  settings: more = [],
  initdb = [],
}: TemporaryPostgresOptions): Promise<TemporaryPostgres | undefined> {
  const bin = findPostgres();
  if (bin === undefined) return undefined;
  const folder = mkdtempSync(join(parent, "steelyard-pg-"));
  const owner = unprivileged();
  if (owner.uid !== undefined) chownSync(folder, owner.uid, owner.gid ?? 0);
  const data = join(folder, "data");
  const run = (program: string, args: readonly string[]) => {
    const { status, stderr, error } = spawnSync(join(bin, program), args, {
      ...owner,
      cwd: folder,
      encoding: "utf8",
    });
    if (status !== 0) throw new Error(`Cannot run ${program}: ${error?.message ?? stderr}`);
  };
  run("initdb", ["-D", data, "-U", user, "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync", ...initdb]);

  let server: ChildProcess | undefined;
  const settings = ["listen_addresses=", `unix_socket_directories=${folder}`, "max_connections=40", ...more];
  if (!durable) settings.push("fsync=off", "synchronous_commit=off", "full_page_writes=off");
  const start = async (): Promise<void> => {
    const args = ["-D", data, ...settings.flatMap((setting) => ["-c", setting])];
    const launch = () =>
      spawn(join(bin, "postgres"), args, { ...owner, cwd: folder, stdio: "ignore", detached: true });
    server = launch();
    for (const deadline = performance.now() + 30_000; ; ) {
      const ready = spawnSync(join(bin, "pg_isready"), ["-q", "-h", folder, "-U", user, "-d", "postgres"]);
      if (ready.status === 0) return;
      // A killed postmaster leaves backends that go a moment later; until then the next one ends at once.
      if (server.exitCode !== null) server = launch();
      if (performance.now() > deadline) throw new Error("Cannot start PostgreSQL within 30 s");
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
  };
  const end = async (signal: "SIGKILL" | "SIGINT"): Promise<void> => {
    const running = server;
    if (running?.pid === undefined || running.exitCode !== null || running.signalCode !== null) return;
    const ended = once(running, "exit");
    // The group, so that no backend outlives its postmaster.
    process.kill(signal === "SIGKILL" ? -running.pid : running.pid, signal);
    await ended;
  };
  await start();
  return {
    createDatabase: (name) => {
      run("psql", ["-q", "-h", folder, "-U", user, "-d", "postgres", "-c", `CREATE DATABASE "${name}"`]);
      return `postgres://${user}@/${name}?host=${encodeURIComponent(folder)}`;
    },
    kill: () => end("SIGKILL"),
    pid: () => server?.pid ?? 0,
    start,
    stop: async () => {
      await end("SIGINT");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** PostgreSQL refuses to run as root: then as the user of Debian's package, or as nobody. */
function unprivileged(): { uid?: number; gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string, name: string) =>
    Number(spawnSync("id", [flag, name], { encoding: "utf8" }).stdout.trim() || Number.NaN);
  for (const name of ["postgres", "nobody"]) {
    const [uid, gid] = [id("-u", name), id("-g", name)];
    if (Number.isInteger(uid) && Number.isInteger(gid)) return { uid, gid };
  }
  throw new Error("Cannot start PostgreSQL as root: there is neither a user postgres nor nobody");
}
