/**
 * How much processor time the statistics of a large study take, beside R doing the same in the same run. Run: `node bench/study.ts`; needs Rscript for
 * the ratios. Budgets: 20,000 bootstrap replicates of 5,000 children within 5 s; 1,800,000 rows from CSV to the accuracy table with strata
 * within 10 s and 1 GB.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { analyseStudy } from "@steelyard/study/analysis";
import {
  accuracyStatistics,
  bootstrapClusters,
  clusterColumns,
  createGenerator,
} from "@steelyard/study/bootstrap";
import { importStudy, openStudyFile } from "@steelyard/study/import";

const { normal, uniform } = createGenerator(1);
const rows = 1_800_000;

report("bootstrap, 20,000 x 5,000", bootstrapSeconds(), peerSeconds("bootstrap"));
const folder = mkdtempSync(join(tmpdir(), "study-"));
try {
  const path = join(folder, "study.csv");
  writeFileSync(path, inventCsv());
  const own = await tableSeconds(path);
  report("1,800,000 rows, CSV to table by site and length", own, peerSeconds("table", path));
} finally {
  rmSync(folder, { recursive: true });
}
console.log(`peak memory ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);

function bootstrapSeconds(): number {
  const trueKg = Float64Array.from({ length: 5000 }, () => 20);
  const estimateKg = trueKg.map((kg) => kg * (1.01 + 0.08 * normal()));
  // The sums that mean, RMSPE and PW10 need, as the peer draws them.
  const columns = clusterColumns({ estimateKg, trueKg }).slice(0, 5);
  const { meanPercent, rmspe, within10 } = accuracyStatistics;
  const start = cpuSeconds();
  bootstrapClusters({ columns, statistics: [meanPercent, rmspe, within10], seed: 1, replicates: 20_000 });
  return cpuSeconds() - start;
}

async function tableSeconds(path: string): Promise<number> {
  const start = cpuSeconds();
  const file = await openStudyFile(readFileSync(path));
  const study = file.ok ? importStudy(file.value) : file;
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  const column = [...study.value.table.numbers.keys()].find((name) => name.startsWith("est"));
  if (column === undefined) throw new Error(`no estimate among ${[...study.value.table.numbers.keys()]}`);
  const { methods } = analyseStudy(study.value.table, {
    methods: [{ type: "column", column }],
    by: ["site", "length"],
  });
  if ((methods[0]?.overall?.n ?? 0) < 0.99 * rows)
    throw new Error(`only ${methods[0]?.overall?.n} rows judged`);
  return cpuSeconds() - start;
}

/** Processor time, so that what else the machine does is left out; R counts the same. */
function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function inventCsv(): string {
  const lines = ["site,length_cm,weight_kg,est_kg"];
  for (let row = 0; row < rows; row++) {
    const lengthCm = 50 + 120 * uniform();
    const weightKg = 16 * (lengthCm / 102) ** 2.2 * Math.exp(0.12 * normal());
    const estimateKg = weightKg * Math.exp(0.08 * normal());
    lines.push(`site ${row % 20},${lengthCm.toFixed(1)},${weightKg.toFixed(2)},${estimateKg.toFixed(2)}`);
  }
  return lines.join("\n");
}

function peerSeconds(...given: string[]): number | undefined {
  const { stdout, status } = spawnSync("Rscript", [join(import.meta.dirname, "study.R"), ...given], {
    encoding: "utf8",
  });
  return status === 0 ? Number(stdout.trim().split("\n").at(-1)) : undefined;
}

function report(what: string, seconds: number, peer: number | undefined): void {
  const beside =
    peer === undefined ? "no R here" : `R ${peer.toFixed(2)} s, ratio ${(seconds / peer).toFixed(2)}`;
  console.log(`${what}: ${seconds.toFixed(2)} s of processor; ${beside}`);
}
