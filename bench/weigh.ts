/**
 * How fast `steelyard weigh` is and how much memory it takes, beside a program that only reads and writes the same
 * file, and what the computing alone costs (see `measure-computing.ts`). Run: `npm run bench`. Ratios are what to compare; seconds hold for
 * one machine on one day.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { inventedChild } from "./invented-child.ts";
import { measureComputing } from "./measure-computing.ts";

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "steelyard-bench-"));

interface Measured {
  readonly seconds: number;
  readonly cpuMs: number;
  readonly peakKb: number;
}

try {
  for (const rows of [100_000, 1_000_000]) compareWithPlain(rows);
  measureComputing(1_000_000);
} finally {
  rmSync(folder, { recursive: true });
}

function compareWithPlain(rows: number): void {
  const input = join(folder, "in.csv");
  const output = join(folder, "out.csv");
  writeFileSync(
    input,
    `lying_length_cm,arm_mm\n${Array.from({ length: rows }, (_, i) => inventedLine(i)).join("\n")}\n`,
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

function inventedLine(i: number): string {
  const { lengthCm, armMm } = inventedChild(i);
  return `${lengthCm},${armMm}`;
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
