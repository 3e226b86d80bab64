// `npm run chaos`: kills the server 1,000 times under write load on each engine, PostgreSQL itself too, and writes what
// it found to apps/server/chaos/report.json. `npm run chaos -- 50` kills 50 times.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startTemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import { type KillReport, runKills } from "./run-kills.ts";

const [killsText = "1000", only] = process.argv.slice(2);
const kills = Number(killsText);
if (!Number.isInteger(kills) || kills < 1)
  throw new RangeError(`The number of kills must be at least 1: ${killsText}`);
const seed = 20261125;
const reports: Record<string, KillReport & { seconds: number }> = {};

async function measure(name: string, run: () => Promise<KillReport>): Promise<void> {
  const start = performance.now();
  const report = await run();
  reports[name] = { ...report, seconds: Math.round((performance.now() - start) / 1_000) };
  console.log(name, reports[name]);
}
const report = (name: string) => (done: number, acknowledged: number) => {
  if (done % 50 === 0) console.log(`${name}: ${done} of ${kills} kills, ${acknowledged} events acknowledged`);
};

if (only !== "postgres") {
  const folder = mkdtempSync(join(tmpdir(), "steelyard-chaos-"));
  const database = { type: "sqlite", file: join(folder, "chaos.sqlite") } as const;
  await measure("sqlite", () => runKills({ database, kills, seed, report: report("sqlite") }));
  rmSync(folder, { recursive: true });
}
if (only !== "sqlite") {
  const postgres = await startTemporaryPostgres({ durable: true });
  if (postgres === undefined) console.warn("SKIPPED on PostgreSQL: none is installed here.");
  else {
    const database = { type: "postgres", url: postgres.createDatabase("chaos") } as const;
    const killDatabase = async () => {
      await postgres.kill();
      await postgres.start();
    };
    await measure("postgres", () =>
      runKills({ database, kills, seed, killDatabase, report: report("postgres") }),
    );
    await postgres.stop();
  }
}
const file = join(import.meta.dirname, "report.json");
const earlier: object = kills < 1_000 ? {} : readReport();
if (kills >= 1_000) writeFileSync(file, `${JSON.stringify({ ...earlier, ...reports }, undefined, 2)}\n`);
const wrong = Object.values(reports).some(({ lost, twice, auditFaults }) => lost + twice + auditFaults > 0);
process.exitCode = wrong ? 1 : 0;

/** Of the other engine, where only one was run. */
function readReport(): object {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return {};
  }
}
