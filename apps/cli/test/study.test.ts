import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runSteelyard, temporaryFolder } from "./run-steelyard.ts";

const rows = Array.from({ length: 30 }, (_, i) => `${80 + i},${140 + i},${(10 + i / 4).toFixed(1)}`).join(
  "\n",
);

describe("steelyard study", { timeout: 120_000 }, () => {
  it("writes the same report for the same file, options and day", () => {
    const folder = temporaryFolder();
    const file = folder.write("ward.csv", `length_cm,arm_mm,weight_kg\n${rows}\n80,140,\n`);
    const args = ["study", file, "--by", "length", "--date", "2026-11-25", "-o"];
    const [one, two] = ["one", "two"].map((name) => runSteelyard([...args, join(folder.path, name)]));
    expect([one?.status, two?.status]).toEqual([0, 0]);
    expect(one?.stderr).toContain("31 rows: 30 compared, 1 left out: no scale weight 1.");
    expect(one?.stdout).toMatch(/body:length\+arm +30 /);
    for (const name of ["report.html", "report.pdf", "accuracy.csv", "site-summary.json"])
      expect(
        readFileSync(join(folder.path, "one", name)).equals(readFileSync(join(folder.path, "two", name))),
      ).toBe(true);
  });

  it.each([
    [["study", "nowhere.csv", "-o", "x"], 1, "there is no such file"],
    [["study", "-o"], 2, "argument missing"],
    [["study", "example"], 2, "name the folder"],
    [["study", "example", "-o", "x", "--methods", "body:hat"], 2, "is no method"],
    [["study", "example", "-o", "x", "--by", "hat"], 2, "there is no hat"],
    [["study", "example", "-o", "x", "--map", "hat=weightKg:kg"], 1, 'no column "hat"'],
    [["study", "example", "-o", "x", "--map", "height_cm=tall"], 2, "column=field:unit"],
  ] as const)("%j ends with %d", (args, status, sentence) => {
    const folder = temporaryFolder();
    const run = runSteelyard(args, { cwd: folder.path });
    expect(run.stderr).toContain(sentence);
    expect(run.status).toBe(status);
    expect(folder.names()).toEqual([]);
  });

  it("pools three summary files, and refuses what is none", () => {
    const folder = temporaryFolder();
    const file = folder.write("ward.csv", `length_cm,arm_mm,weight_kg\n${rows}\n`);
    const paths = ["Alder", "Larch", "Rowan"].map((site) => {
      runSteelyard(["study", file, "--by", "length", "--site-name", site, "-o", join(folder.path, site)]);
      return join(folder.path, site, "site-summary.json");
    });
    const pooled = runSteelyard(["study", "pool", ...paths]);
    expect([pooled.status, pooled.stdout]).toEqual([
      0,
      expect.stringMatching(/body:length\+arm +within 10 % +3 +90/),
    ]);
    expect(runSteelyard(["study", "pool", file, ...paths])).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("Cannot use"),
    });
    expect(runSteelyard(["study", "pool", ...paths.slice(1)])).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("three sites"),
    });
  });
});
