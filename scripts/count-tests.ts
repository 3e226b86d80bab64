import { existsSync, readFileSync } from "node:fs";

export interface TestCounts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/**
 * Counts of one Vitest JSON report. A file that could not be loaded has no tests to count and is one
 * failure; so is a run that ended badly without a failed test or without a report.
 */
export function countTests(reportFile: string, ranWell: boolean): TestCounts {
  if (!existsSync(reportFile)) return { passed: 0, failed: 1, skipped: 0 };
  const report: VitestReport = JSON.parse(readFileSync(reportFile, "utf8"));
  const unloaded = report.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  ).length;
  const failed = report.numFailedTests + unloaded;
  return {
    passed: report.numPassedTests,
    failed: !ranWell && failed === 0 ? 1 : failed,
    skipped: report.numPendingTests,
  };
}
