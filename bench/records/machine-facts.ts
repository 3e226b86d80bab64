import { spawnSync } from "node:child_process";
import { readFileSync, statfsSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import { join } from "node:path";
import { findPostgres } from "../../scripts/find-postgres.ts";

export interface MachineFacts {
  readonly day: string;
  readonly processor: string;
  readonly processors: number;
  /** Of the minute before the first step, filling among it: what else the machine had to do. */
  readonly loadBefore: number;
  readonly memoryGb: number;
  readonly freeDiskGb: number;
  readonly fileSystem: string;
  readonly node: string;
  readonly sqlite: string;
  readonly postgres: string;
  readonly postgresSettings: readonly string[];
}

/** What has to be known of a machine before its figures mean anything. */
export function machineFacts(folder: string, postgresSettings: readonly string[]): MachineFacts {
  const { bavail, bsize } = statfsSync(folder);
  const bin = findPostgres();
  const version = bin === undefined ? "none" : spawnSync(join(bin, "postgres"), ["--version"]).stdout;
  const kind = spawnSync("stat", ["-f", "-c", "%T", folder], { encoding: "utf8" }).stdout?.trim();
  return {
    day: new Date().toISOString().slice(0, 10),
    processor: /model name\s*: (.*)/.exec(readFileSync("/proc/cpuinfo", "utf8"))?.[1] ?? "unknown",
    processors: cpus().length,
    loadBefore: Number((loadavg()[0] ?? 0).toFixed(2)),
    memoryGb: Math.round(totalmem() / 2 ** 30),
    freeDiskGb: Math.round((bavail * bsize) / 2 ** 30),
    fileSystem: kind || "unknown",
    node: process.version,
    sqlite: process.versions.sqlite ?? "unknown",
    postgres: /[\d.]+/.exec(String(version))?.[0] ?? "none",
    postgresSettings,
  };
}
