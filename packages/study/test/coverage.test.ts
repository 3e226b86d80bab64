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

it("covers every interval", () => {
  expect(coverage.size).toBeGreaterThanOrEqual(30);
});
