import { spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { type DatabaseSettings, openStore } from "@steelyard/records/store";
import { type ServerProcess, startServer } from "../../apps/server/chaos/server-process.ts";
import type { LoadOrder, LoadOutcome } from "./drive-load.ts";
import { type Bottleneck, nameBottleneck } from "./name-bottleneck.ts";
import { machineSeconds, processSeconds } from "./process-seconds.ts";
import { type Waits, watchWaits } from "./watch-waits.ts";

export interface IntakeStep {
  readonly sites: number;
  readonly connections: number;
  readonly eventsPerPush: number;
  readonly requestsPerSecond: number;
  readonly eventsPerSecond: number;
  readonly failures: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
  /** Of one processor, by each that worked; `machine` is everything on it. */
  readonly processorShares: Readonly<Record<string, number>>;
  readonly waits: Waits;
  readonly bottleneck: Bottleneck;
}

export interface IntakeOptions {
  readonly database: DatabaseSettings;
  readonly servers: number;
  readonly seconds: number;
  readonly processors: number;
  /** Of its postmaster. */
  readonly postgresPid?: number;
  readonly steps: readonly Pick<IntakeStep, "sites" | "connections" | "eventsPerPush">[];
}

/** Devices of as many sites; a token of each. */
async function enrol(database: DatabaseSettings, sites: number): Promise<readonly string[]> {
  const store = await openStore({ database, clock: () => new Date().toISOString(), newId: randomUUID });
  const tokens: string[] = [];
  for (let i = 0; i < sites; i++) {
    const site = i === 0 ? "main" : `site-${i}`;
    const token = randomUUID() + randomUUID();
    await store.addSite(site);
    await store.enrolDevice({ site, actor: "command", id: randomUUID(), name: `Device ${i}`, token });
    tokens.push(token);
  }
  await store.close();
  return tokens;
}

/** Starts real servers on one database, pushes to them from another process, and says how much went in and what held it up. */
export async function measureIntake(options: IntakeOptions): Promise<readonly IntakeStep[]> {
  const { database, postgresPid } = options;
  const tokens = await enrol(database, Math.max(...options.steps.map(({ sites }) => sites)));
  const env = {
    STEELYARD_DATABASE: database.type === "sqlite" ? database.file : database.url,
    STEELYARD_REQUESTS_PER_MINUTE: "100000",
  };
  const servers: ServerProcess[] = [];
  for (let i = 0; i < options.servers; i++) servers.push(await startServer(env));
  const watched = new Map(
    servers.map(({ pid }, i) => [`server ${i + 1}`, () => processSeconds(pid, { children: false })]),
  );
  if (postgresPid !== undefined) {
    watched.set("PostgreSQL", () => processSeconds(postgresPid, { children: true }));
  }
  watched.set("machine", machineSeconds);
  const order = (step: IntakeOptions["steps"][number], seconds: number): LoadOrder => ({
    urls: servers.map(({ url }) => url),
    tokens: tokens.slice(0, step.sites),
    ...step,
    seconds,
  });
  const done: IntakeStep[] = [];
  for (const step of options.steps) {
    // Code is compiled and connections are made before anything counts.
    await drive(order(step, 1));
    const before = new Map([...watched].map(([name, read]) => [name, read()]));
    const waits = database.type === "postgres" ? watchWaits(database.url) : undefined;
    const start = performance.now();
    const outcome = await drive(order(step, options.seconds));
    const wholeSeconds = (performance.now() - start) / 1_000;
    const seenWaits = (await waits?.stop()) ?? {};
    const shareOf = (cpuSeconds: number) => Number((cpuSeconds / wholeSeconds).toFixed(2));
    const shares: Record<string, number> = {};
    for (const [name, read] of watched) shares[name] = shareOf(read() - (before.get(name) ?? 0));
    shares.devices = shareOf(outcome.cpuSeconds);
    const { p50Ms, p95Ms, p99Ms, failures } = outcome;
    const seen = { processorShares: shares, waits: seenWaits };
    done.push({
      ...step,
      requestsPerSecond: Math.round(outcome.requests / outcome.seconds),
      eventsPerSecond: step.eventsPerPush === 0 ? 0 : Math.round(outcome.events / outcome.seconds),
      failures,
      ...{ p50Ms, p95Ms, p99Ms },
      ...seen,
      bottleneck: nameBottleneck({ ...seen, ...step, processors: options.processors, engine: database.type }),
    });
  }
  for (const server of servers) await server.kill("SIGTERM");
  return done;
}

async function drive(order: LoadOrder): Promise<LoadOutcome> {
  const main = fileURLToPath(new URL("drive-load.ts", import.meta.url));
  const child = spawn(process.execPath, [main, JSON.stringify(order)], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  let text = "";
  child.stdout.on("data", (chunk) => {
    text += chunk;
  });
  const [code] = await once(child, "close");
  if (code !== 0) throw new Error(`The devices ended with ${code}`);
  return JSON.parse(text) as LoadOutcome;
}
