import { spawnSync } from "node:child_process";
import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const main = fileURLToPath(new URL("../src/fit/main.ts", import.meta.url));

function fit(...args: readonly string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [main, ...args], { encoding: "utf8" });
}

// None of these writes a file: the folder of a fit that would is never given.
describe("the fit command", () => {
  it("shows how it is used and ends with 2 when no folder is named", () => {
    const { status, stdout, stderr } = fit();
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain("npm run fit -- --nhanes DIR");
  });

  it("shows how it is used and ends with 0 when asked", () => {
    const { status, stdout, stderr } = fit("--help");
    expect(status).toBe(0);
    expect(stdout).toContain("--surveys FILE");
    expect(stderr).toBe("");
  });

  it("names an option it does not know and ends with 2", () => {
    const { status, stderr } = fit("--nhanse", "somewhere");
    expect(status).toBe(2);
    expect(stderr).toContain("--nhanse");
    expect(stderr).toContain("npm run fit -- --nhanes DIR");
  });

  it("says in one line that the folder is not there and ends with 1", () => {
    const missing = join(tmpdir(), "steelyard-no-such-folder");
    const { status, stdout, stderr } = fit("--nhanes", missing);
    expect(status).toBe(1);
    expect(stdout).toBe("");
    expect(stderr).toBe(`Cannot fit as there is no folder ${missing}\n`);
  });

  it("says what to download when the folder is empty and ends with 1", () => {
    const empty = mkdtempSync(join(tmpdir(), "steelyard-empty-"));
    const { status, stderr } = fit("--nhanes", empty);
    rmdirSync(empty);
    expect(status).toBe(1);
    expect(stderr).toContain("BMX_*.XPT and DEMO_*.XPT from the CDC");
    expect(stderr.trim().split("\n")).toHaveLength(1);
  });

  it("says before it fits that the surveys are not there and ends with 1", () => {
    const missing = join(tmpdir(), "steelyard-no-such-surveys.csv");
    const { status, stderr } = fit("--nhanes", missing, "--surveys", missing);
    expect(status).toBe(1);
    expect(stderr).toContain(`open '${missing}'`);
    expect(stderr.trim().split("\n")).toHaveLength(1);
  });
});
