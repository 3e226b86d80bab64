import { createHash, randomUUID } from "node:crypto";
import { type DatabaseSettings, openStore } from "@steelyard/records/store";
import { startServer } from "./server-process.ts";
import { createWriter } from "./writer.ts";

export interface KillOptions {
  readonly database: DatabaseSettings;
  readonly kills: number;
  /** Of the moments of the kills and of the load. */
  readonly seed: number;
  /** Kills and starts the database itself; every `databaseEvery`th kill is one of these. */
  readonly killDatabase?: () => Promise<void>;
  readonly databaseEvery?: number;
  readonly report?: (done: number, acknowledged: number) => void;
}

export interface KillReport {
  readonly kills: number;
  readonly databaseKills: number;
  readonly acknowledged: number;
  readonly stored: number;
  /** Acknowledged and not there. */
  readonly lost: number;
  readonly twice: number;
  readonly auditFaults: number;
}

const token = "a-device-of-the-chaos-run-with-a-long-token";
const site = "main";
const writers = 4;

/** Writes from several devices without a pause while the server is killed again and again, then looks at what is there. */
export async function runKills(options: KillOptions): Promise<KillReport> {
  const { database, kills, seed, killDatabase, databaseEvery = 5, report } = options;
  const chance = seededChance(seed);
  const clock = () => new Date().toISOString();
  const prepared = await openStore({ database, clock, newId: randomUUID });
  await prepared.addSite(site);
  await prepared.enrolDevice({ site, actor: "command", id: randomUUID(), name: "Chaos", token });
  await prepared.close();

  const env = {
    STEELYARD_DATABASE: database.type === "sqlite" ? database.file : database.url,
    STEELYARD_REQUESTS_PER_MINUTE: "100000",
  };
  const devices = Array.from({ length: writers }, (_, number) => createWriter({ token, number, chance }));
  let [server, stop, databaseKills] = [await startServer(env), false, 0];
  const load = devices.map(async (device) => {
    while (!stop) {
      const answered = await device.push(server.url);
      // Spares the processor while nobody listens.
      await new Promise((resolve) => setTimeout(resolve, answered ? 0 : 15));
    }
  });
  const acknowledged = () => devices.reduce((sum, device) => sum + device.acknowledged.size, 0);
  for (let done = 1; done <= kills; done++) {
    await new Promise((resolve) => setTimeout(resolve, 20 + chance() * 130));
    if (killDatabase !== undefined && done % databaseEvery === 0) {
      databaseKills++;
      await killDatabase();
    }
    await server.kill("SIGKILL");
    server = await startServer(env);
    report?.(done, acknowledged());
  }
  stop = true;
  await Promise.all(load);
  // What was on its way when the last server went is sent once more, as a device would.
  for (const device of devices) while (device.waiting() > 0) await device.push(server.url);
  await server.kill("SIGTERM");

  const store = await openStore({ database, clock, newId: randomUUID });
  const rows = await store.db.selectFrom("case_event").select("id").where("site", "=", site).execute();
  const audit = await store.verifyAudit();
  await store.close();
  const stored = new Set(rows.map(({ id }) => id));
  return {
    kills,
    databaseKills,
    acknowledged: acknowledged(),
    stored: rows.length,
    lost: devices.flatMap((device) => [...device.acknowledged]).filter((id) => !stored.has(id)).length,
    twice: rows.length - stored.size,
    auditFaults: audit.faults.length,
  };
}

/** The same numbers in [0, 1) for the same seed. */
function seededChance(seed: number): () => number {
  let drawn = 0;
  return () => createHash("sha256").update(`${seed} ${drawn++}`).digest().readUInt32BE() / 2 ** 32;
}
