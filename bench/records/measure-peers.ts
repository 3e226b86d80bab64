import { spawnSync } from "node:child_process";
import { closeSync, fdatasyncSync, openSync, writeFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { findPostgres } from "../../scripts/find-postgres.ts";
import { type Quantiles, quantilesOf } from "./quantiles.ts";

export interface Peer extends Quantiles {
  readonly perSecond: number;
}

/** Appending 4 kB to a file and waiting until it is on the disk: what every commit has to do at least. */
export function measureSync(folder: string, seconds: number): Peer {
  const file = openSync(join(folder, "sync"), "w");
  const block = Buffer.alloc(4_096, 1);
  const peer = repeat(seconds, () => {
    writeSync(file, block);
    fdatasyncSync(file);
  });
  closeSync(file);
  return peer;
}

/** One row, one commit, no more: the least that a push may cost on SQLite. */
export function measureSqliteInsert(folder: string, seconds: number): Peer {
  const database = new DatabaseSync(join(folder, "peer.sqlite"));
  database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE peer (payload TEXT)");
  const insert = database.prepare("INSERT INTO peer VALUES (?)");
  const payload = "x".repeat(600);
  const peer = repeat(seconds, () => insert.run(payload));
  database.close();
  return peer;
}

function repeat(seconds: number, work: () => unknown): Peer {
  const times: number[] = [];
  const end = performance.now() + seconds * 1_000;
  for (let at = performance.now(); at < end; ) {
    work();
    const now = performance.now();
    times.push(now - at);
    at = now;
  }
  return { perSecond: Math.round(times.length / seconds), ...quantilesOf(times) };
}

/** The same on PostgreSQL by its own `pgbench`, from several clients at once. */
export function measurePostgresInsert(
  folder: string,
  options: { readonly url: string; readonly clients: number; readonly seconds: number },
): { readonly perSecond: number; readonly averageMs: number } {
  const { url, clients, seconds } = options;
  const bin = findPostgres() ?? "";
  const script = join(folder, "peer.sql");
  writeFileSync(script, "INSERT INTO peer VALUES (repeat('x', 600));\n");
  spawnSync(join(bin, "psql"), ["-q", "-c", "CREATE TABLE IF NOT EXISTS peer (payload text)", url]);
  const args = ["-n", "-c", String(clients), "-j", "1", "-T", String(seconds), "-f", script, url];
  const { stdout, stderr } = spawnSync(join(bin, "pgbench"), args, { encoding: "utf8" });
  const number = (pattern: RegExp) => Number(pattern.exec(stdout)?.[1] ?? Number.NaN);
  const perSecond = Math.round(number(/tps = ([\d.]+)/));
  if (Number.isNaN(perSecond)) throw new Error(`pgbench: ${stderr}`);
  return { perSecond, averageMs: number(/latency average = ([\d.]+)/) };
}
