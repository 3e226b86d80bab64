import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { simulateCoverage } from "./coverage/simulate-coverage.ts";

// The whole log, 2,000 studies, is coverage/coverage-log.md; this is a seeded sample of it.
const studies = 300;
const coverage = simulateCoverage({ studies, seed: 7 });

it.each(Array.from(coverage, ([name, percent]) => ({ name, percent })))(
  "the nominal 95 % interval holds the truth as often as it says: $name",
  ({ percent }) => {
    // 93 to 97 % is asked of 2,000 studies; two standard errors more for 300.
    const slack = 200 * Math.sqrt((0.95 * 0.05) / studies);
    expect(percent).toBeGreaterThan(93 - slack);
    expect(percent).toBeLessThanOrEqual(Math.min(100, 97 + slack));
  },
);

it("every interval held the truth in 93 to 97 % of 2,000 studies, and docs/statistics.md says so", () => {
  const log = readFileSync(new URL("coverage/coverage-log.md", import.meta.url), "utf8");
  const page = readFileSync(new URL("../../../docs/statistics.md", import.meta.url), "utf8");
  expect(log).toContain("2000 simulated studies each");
  for (const name of coverage.keys()) {
    const row = log.split("\n").find((line) => line.startsWith(`| ${name} |`)) ?? "";
    const percent = Number(row.split("|")[2]);
    expect(percent, name).toBeGreaterThanOrEqual(93);
    expect(percent, name).toBeLessThanOrEqual(97);
    expect(page).toContain(row);
  }
  expect(coverage.size).toBeGreaterThanOrEqual(40);
});
