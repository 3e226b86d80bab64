// `npm run ok`: everything that must hold before a change is done. Every check runs even when an earlier one
// failed, so that one run tells all. The last line counts checks and tests alike: `N passed, N failed`.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { countTests } from "./count-tests.ts";

// Biome colours a log file letter by letter unless told not to.
const plain = process.stdout.isTTY ? [] : ["--", "--colors=off"];

const checks = [
  { name: "types", script: "typecheck", args: [] },
  { name: "format and lint", script: "lint", args: plain },
  { name: "boundaries", script: "boundaries", args: [] },
  { name: "dead code", script: "knip", args: [] },
  { name: "build of the page", script: "build", args: [] },
];
const suites = [
  { name: "unit tests", script: "unit" },
  { name: "journeys in a browser", script: "journeys" },
];

function run(script: string, args: readonly string[]): { ok: boolean; seconds: number } {
  const start = performance.now();
  const { status } = spawnSync("npm", ["run", "--silent", script, ...args], { stdio: "inherit" });
  return { ok: status === 0, seconds: Math.round((performance.now() - start) / 1000) };
}

const reports = mkdtempSync(join(tmpdir(), "steelyard-ok-"));
const outcomes = [
  ...checks.map(({ name, script, args }) => {
    console.log(`\n== ${name}`);
    const { ok, seconds } = run(script, args);
    return { name, seconds, ok, passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 };
  }),
  ...suites.map(({ name, script }) => {
    console.log(`\n== ${name}`);
    const report = join(reports, `${script}.json`);
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
    const { ok, seconds } = run(script, ["--", ...reporters]);
    return { name, seconds, ok, ...countTests(report, ok) };
  }),
];
rmSync(reports, { recursive: true, force: true });

console.log("");
for (const { name, ok, seconds, passed, failed, skipped } of outcomes) {
  const counts = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
  console.log(`${ok ? "ok    " : "FAILED"} ${name.padEnd(22)} ${counts} (${seconds} s)`);
}
const sum = (key: "passed" | "failed") => outcomes.reduce((total, outcome) => total + outcome[key], 0);
console.log(`\n${sum("passed")} passed, ${sum("failed")} failed`);
process.exitCode = outcomes.every(({ ok }) => ok) ? 0 : 1;
