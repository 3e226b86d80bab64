// A long CSV of two columns of estimates to the accuracy table with strata, beside R doing the same in the same minute.
// node bench/study-import.ts [rows, 1,800,000 when not given]
import { spawnSync } from "node:child_process";
import { createWriteStream, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { finished } from "node:stream/promises";
import { fileURLToPath } from "node:url";
import { analyseStudy } from "@steelyard/study/analysis";
import { createGenerator } from "@steelyard/study/bootstrap";
import { importStudy, openStudyFile } from "@steelyard/study/import";
import { selectRows } from "@steelyard/study/table";

const rows = Number(process.argv[2] ?? 1_800_000);
const folder = mkdtempSync(join(tmpdir(), "steelyard-bench-"));
const path = join(folder, "long.csv");
try {
  await writeRows();
  const start = performance.now();
  const file = await openStudyFile(readFileSync(path));
  const study = file.ok ? importStudy(file.value) : file;
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  const { table, fates } = study.value;
  const compared = selectRows(table, (row) => fates[row] === 0);
  const { methods } = analyseStudy(compared, {
    methods: [
      { type: "column", column: "a_kg" },
      { type: "column", column: "b_kg" },
    ],
    by: ["length", "age", "sex", "site"],
  });
  const own = (performance.now() - start) / 1000;
  const peak = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(`${rows} rows, ${methods.length} methods, 4 strata: ${round(own)} s, peak ${peak} MB`);
  const script = fileURLToPath(new URL("study-import.R", import.meta.url));
  const r = spawnSync("Rscript", ["--vanilla", script, path], { encoding: "utf8" });
  if (r.status !== 0) throw new Error(`R: ${r.stderr}`);
  const [seconds = Number.NaN, mb = Number.NaN, within = Number.NaN] = r.stdout.trim().split(" ").map(Number);
  const same = Math.abs(within - (methods[0]?.overall?.within10.share ?? 0)) < 1e-12;
  console.log(
    `R read.csv and the same table: ${round(seconds)} s, peak ${Math.round(mb)} MB; ${same ? "same" : "OTHER"} share within 10 %`,
  );
  console.log(`R / steelyard: ${round(seconds / own)} in time, ${round(mb / peak)} in memory`);
} finally {
  rmSync(folder, { recursive: true });
}

function round(value: number): number {
  return Math.round(100 * value) / 100;
}

async function writeRows(): Promise<void> {
  const { uniform: random } = createGenerator(1);
  const out = createWriteStream(path);
  out.write("site,sex,age_months,length_cm,weight_kg,a_kg,b_kg\n");
  let part = "";
  const tenth = (value: number): number => Math.round(10 * value) / 10;
  for (let i = 0; i < rows; i++) {
    const length = 50 + 130 * random();
    const weight = (length ** 2.5 / 9000) * (0.8 + 0.4 * random());
    part += `s${i % 40},${random() < 0.5 ? "m" : "f"},${Math.floor(180 * random())},${tenth(length)},${tenth(weight)},${tenth(weight * (0.8 + 0.4 * random()))},${tenth(weight * (0.9 + 0.2 * random()))}\n`;
    if (part.length < 1 << 20) continue;
    if (!out.write(part)) await new Promise<void>((drained) => out.once("drain", () => drained()));
    part = "";
  }
  out.end(part);
  await finished(out);
}
