import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { countTests } from "../scripts/count-tests.ts";

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "steelyard-count-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function reportOf(
  counts: readonly [passed: number, failed: number],
  unloadedFiles = 0,
): Promise<string> {
  const file = join(folder, "report.json");
  const [numPassedTests, numFailedTests] = counts;
  const loaded = { status: "passed", assertionResults: [{}] };
  const unloaded = Array.from({ length: unloadedFiles }, () => ({ status: "failed", assertionResults: [] }));
  const report = { numPassedTests, numFailedTests, numPendingTests: 2, testResults: [loaded, ...unloaded] };
  await writeFile(file, JSON.stringify(report));
  return file;
}

describe("countTests()", () => {
  it("gives what the report says", async () => {
    expect(countTests(await reportOf([7, 3]), false)).toEqual({ passed: 7, failed: 3, skipped: 2 });
  });

  it("counts a file that could not be loaded as a failure", async () => {
    expect(countTests(await reportOf([7, 0], 2), false).failed).toBe(2);
  });

  it("counts a run that ended badly without a failed test as a failure", async () => {
    expect(countTests(await reportOf([7, 0]), false).failed).toBe(1);
    expect(countTests(join(folder, "none.json"), true).failed).toBe(1);
  });
});
