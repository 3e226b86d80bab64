/**
 * How much the records of a department take in and what that costs as they grow: two servers on one PostgreSQL and one on
 * SQLite, each beside what the same disk and the same engine do without us, on this machine only. `npm run bench:records`
 * measures up to a million events and takes minutes; `-- --sizes 10000000` says how many, `--seconds 1` how long each step,
 * `--write` keeps the result in `docs/evidence/records.json` and writes `docs/evidence/records.md` and the figures of
 * `docs/scale.md` again.
 */
import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { DatabaseSettings } from "@steelyard/records/store";
import { startTemporaryPostgres } from "../scripts/temporary-postgres.ts";
import type { FillOrder } from "./records/fill-database.ts";
import { machineFacts } from "./records/machine-facts.ts";
import { type Growth, measureGrowth } from "./records/measure-growth.ts";
import { measureIntake } from "./records/measure-intake.ts";
import { measurePostgresInsert, measureSqliteInsert, measureSync } from "./records/measure-peers.ts";
import type { RecordsResult } from "./records/records-result.ts";
import { writePages } from "./records/write-pages.ts";

const { values } = parseArgs({
  options: {
    sizes: { type: "string", default: "100000,1000000" },
    seconds: { type: "string", default: "5" },
    connections: { type: "string", default: "1,4,16,64" },
    write: { type: "boolean", default: false },
  },
});
const sizes = values.sizes.split(",").filter(Boolean).map(Number);
const seconds = Number(values.seconds);
const connections = values.connections.split(",").map(Number);
const manySites = 64;

const settings = ["shared_buffers=1GB", "max_wal_size=8GB", "checkpoint_timeout=30min"];
const folder = mkdtempSync(join(tmpdir(), "steelyard-bench-records-"));
const postgres = await startTemporaryPostgres({ durable: true, parent: tmpdir(), settings });
if (postgres === undefined) throw new Error("PostgreSQL is not installed here: npm test installs it");
const say = (text: string) => console.log(`${new Date().toISOString().slice(11, 19)} ${text}`);

try {
  const orders = (databaseOf: (events: number) => DatabaseSettings): readonly FillOrder[] =>
    sizes.map((events) => ({ events, database: databaseOf(events) }));
  const filled = (
    await Promise.all([
      fillAll(orders((events) => ({ type: "postgres", url: postgres.createDatabase(`events_${events}`) }))),
      fillAll(orders((events) => ({ type: "sqlite", file: join(folder, `events-${events}.sqlite`) }))),
    ])
  ).flat();

  const machine = machineFacts(folder, settings);
  const sync = measureSync(folder, seconds);
  const sqliteInsert = measureSqliteInsert(folder, seconds);
  const peerUrl = postgres.createDatabase("peer");
  const postgresInsert = connections.map((clients) => ({
    clients,
    ...measurePostgresInsert(folder, { url: peerUrl, clients: Math.min(clients, 32), seconds }),
  }));
  say(`peers: ${JSON.stringify({ sync, sqliteInsert, postgresInsert })}`);

  const steps = [1, manySites].flatMap((sites) => [
    ...connections.map((count) => ({ sites, connections: count, eventsPerPush: 1 })),
    { sites, connections: 16, eventsPerPush: 50 },
  ]);
  steps.push({ sites: manySites, connections: 16, eventsPerPush: 0 });
  const common = { seconds, processors: cpus().length, steps };
  const onPostgres = await measureIntake({
    ...common,
    database: { type: "postgres", url: postgres.createDatabase("intake") },
    servers: 2,
    postgresPid: postgres.pid(),
  });
  for (const step of onPostgres) say(`postgres: ${JSON.stringify(step)}`);
  const onSqlite = await measureIntake({
    ...common,
    database: { type: "sqlite", file: join(folder, "intake.sqlite") },
    servers: 1,
  });
  for (const step of onSqlite) say(`sqlite: ${JSON.stringify(step)}`);

  const growth: Growth[] = [];
  for (const each of filled) {
    growth.push(await measureGrowth(each.database, { ...each, times: 200 }));
    say(`growth: ${JSON.stringify(growth.at(-1))}`);
  }
  const result: RecordsResult = {
    machine,
    seconds,
    peers: { sync, sqliteInsert, postgresInsert },
    intake: { postgres: onPostgres, sqlite: onSqlite },
    growth,
  };
  if (values.write) {
    const file = fileURLToPath(new URL("../docs/evidence/records.json", import.meta.url));
    writeFileSync(file, `${JSON.stringify(result, undefined, 2)}\n`);
    spawnSync("biome", ["format", "--write", file]);
    writePages(result);
  }
} finally {
  await postgres.stop();
  rmSync(folder, { recursive: true, force: true });
}

/** One after the other. */
async function fillAll(
  all: readonly FillOrder[],
): Promise<readonly (FillOrder & { readonly fillSeconds: number })[]> {
  const main = fileURLToPath(new URL("records/fill-database.ts", import.meta.url));
  const done: (FillOrder & { fillSeconds: number })[] = [];
  for (const order of all) {
    const child = spawn(process.execPath, [main, JSON.stringify(order)], {
      stdio: ["ignore", "pipe", "inherit"],
    });
    let text = "";
    child.stdout.on("data", (chunk) => {
      text += chunk;
    });
    const [code] = await once(child, "close");
    if (code !== 0) throw new Error(`Filling ended with ${code}`);
    say(`${order.database.type}: filled with ${order.events} events in ${text} s`);
    done.push({ ...order, fillSeconds: Number(text) });
  }
  return done;
}
