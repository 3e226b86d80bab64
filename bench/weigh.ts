/**
 * How fast `steelyard weigh` is and how much memory it takes, beside a program that only reads and writes the same
 * file, and what the computing alone costs. Run: `node bench/weigh.ts`. Budget: 1,000,000 rows of length and arm
 * in 2 s of computing, in constant memory. Ratios are what to compare; seconds hold for one machine on one day.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { estimateWeight, idealWeight } from "@steelyard/core/body";
import { readMeasurements } from "@steelyard/core/entry";

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "steelyard-bench-"));

interface Measured {
  readonly seconds: number;
  readonly cpuMs: number;
  readonly peakKb: number;
}

try {
  for (const rows of [100_000, 1_000_000]) compareWithPlain(rows);
  for (const columns of [["m"], [""]] as const) measureComputing(200_000, columns[0]);
} finally {
  rmSync(folder, { recursive: true });
}

function compareWithPlain(rows: number): void {
  const input = join(folder, "in.csv");
  const output = join(folder, "out.csv");
  writeFileSync(
    input,
    `lying_length_cm,arm_mm\n${Array.from({ length: rows }, (_, i) => child(i).join(",")).join("\n")}\n`,
  );
  const plain = run([here("weigh-plain.ts"), input, output]);
  const weigh = run([here("../apps/cli/bin/steelyard.js"), "weigh", input, "-o", output]);
  const line = (name: string, { seconds, peakKb }: Measured): string =>
    `  ${name.padEnd(16)} ${seconds.toFixed(2)} s  ${Math.round(rows / seconds).toLocaleString("en-GB")} rows/s  peak ${Math.round(peakKb / 1024)} MB`;
  console.log(`${rows.toLocaleString("en-GB")} rows of length and arm`);
  console.log(line("read and write", plain));
  console.log(line("steelyard weigh", weigh));
  console.log(
    `  ratio            ${(weigh.seconds / plain.seconds).toFixed(2)} in time, ${(weigh.peakKb / plain.peakKb).toFixed(2)} in memory; ` +
      `computing ${((weigh.cpuMs - plain.cpuMs) / 1000).toFixed(2)} s of processor time`,
  );
}

/** Reading two cells, the estimate and the ideal weight, without any file. */
function measureComputing(rows: number, sex: string): void {
  const cells = Array.from({ length: rows }, (_, i) => child(i));
  const weighAll = (): number => {
    const start = performance.now();
    for (const [lengthCm, armMm] of cells) {
      const read = readMeasurements({ lengthCm, armMm, sex });
      if (!read.ok) throw new Error(`Cannot read ${lengthCm} and ${armMm}`);
      const { measurements } = read.value;
      const estimate = estimateWeight(measurements);
      if (!estimate.ok || measurements.lengthCm === undefined)
        throw new Error(`Cannot weigh ${lengthCm} and ${armMm}`);
      idealWeight({ lengthCm: measurements.lengthCm, sex: measurements.sex });
    }
    return performance.now() - start;
  };
  weighAll();
  const seconds = (Math.min(weighAll(), weighAll(), weighAll()) / 1000) * (1_000_000 / rows);
  console.log(
    `computing alone, ${sex === "" ? "sex unknown" : "sex known"}: ${seconds.toFixed(2)} s for 1,000,000 rows`,
  );
}

/** An invented child: lengths spread over the whole range, arms over the usual width at that length. */
function child(i: number): readonly [lengthCm: string, armMm: string] {
  const lengthCm = 55 + ((i * 7919) % 1300) / 10;
  const armMm = Math.round((105 + 1.1 * (lengthCm - 50)) * (0.85 + 0.45 * (((i * 104_729) % 1000) / 1000)));
  return [lengthCm.toFixed(1), String(armMm)];
}

function run(args: readonly string[]): Measured {
  const start = performance.now();
  const { status, stderr, output } = spawnSync(
    process.execPath,
    ["--import", here("weigh-report-peak.ts"), ...args],
    {
      stdio: ["ignore", "ignore", "pipe", "pipe"],
      encoding: "utf8",
    },
  );
  if (status !== 0) throw new Error(`Cannot measure ${args[0]}: ${stderr}`);
  return { seconds: (performance.now() - start) / 1000, ...JSON.parse(output[3] ?? "") };
}
