import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { temporaryFolder } from "./run-steelyard.ts";

const rows = Array.from({ length: 30 }, (_, i) => `${80 + i},${140 + i},${(10 + i / 4).toFixed(1)}`).join(
  "\n",
);

describe("steelyard study", { timeout: 120_000 }, () => {
  it("writes the same report for the same file, options and day", async () => {
    const folder = temporaryFolder();
    const file = folder.write("ward.csv", `length_cm,arm_mm,weight_kg\n${rows}\n80,140,\n`);
    const args = ["study", file, "--by", "length", "--date", "2026-11-25", "-o"];
    const one = await callSteelyard([...args, join(folder.path, "one")]);
    const two = await callSteelyard([...args, join(folder.path, "two")]);
    expect([one.status, two.status]).toEqual([0, 0]);
    expect(one.stderr).toContain("31 rows: 30 compared, 1 left out: no scale weight 1.");
    expect(one.stdout).toMatch(/body:length\+arm +30 /);
    for (const name of ["report.html", "report.pdf", "accuracy.csv", "site-summary.json"])
      expect(
        readFileSync(join(folder.path, "one", name)).equals(readFileSync(join(folder.path, "two", name))),
      ).toBe(true);
  });

  it("compares by a chosen reference and margin, judges doses and draws by seed; PNG beside SVG", async () => {
    const folder = temporaryFolder();
    const file = folder.write(
      "ward.csv",
      `length_cm,arm_mm,weight_kg,nurse_kg,site\n${Array.from({ length: 30 }, (_, i) => `${80 + i},${140 + i},${10 + i / 4},${11 + i / 5},${"ABC"[i % 3]}`).join("\n")}\n`,
    );
    const args = ["--compare", "nurse_kg", "body:length+arm", "--margin", "5", "--clusters", "site"];
    const run = await callSteelyard(
      ["study", file, ...args, "--seed", "9", "--replicates", "100", "--formulary", "draft", "-o", "out"],
      { cwd: folder.path },
    );
    expect(run.status).toBe(0);
    const read = (name: string): string => readFileSync(join(folder.path, "out", name), "utf8");
    expect(read("comparison.csv")).toMatch(/\nbody:length\+arm,nurse_kg,30,.*holm,0\.05,/);
    expect(read("accuracy-clusters.csv")).toMatch(/\nnurse_kg,meanPercent,3,30,100,9,/);
    expect(read("consequence.csv")).toMatch(/\nbody:length\+arm,30,/);
    expect(
      readFileSync(join(folder.path, "out", "within.png"))
        .subarray(1, 4)
        .toString(),
    ).toBe("PNG");
  });

  it.each([
    [["study", "nowhere.csv", "-o", "x"], 1, "there is no such file"],
    [["study", "-o"], 2, "argument missing"],
    [["study", "example"], 2, "name the folder"],
    [["study", "example", "-o", "x", "--methods", "body:hat"], 2, "is no method"],
    [["study", "example", "-o", "x", "--by", "hat"], 2, "there is no hat"],
    [["study", "example", "-o", "x", "--clusters", "hat"], 2, "there is no hat"],
    [["study", "example", "-o", "x", "--seed", "1.5"], 2, "no whole number"],
    [["study", "example", "-o", "x", "--margin", "none"], 2, "no number"],
    [["study", "example", "-o", "x", "--map", "hat=weightKg:kg"], 1, 'no column "hat"'],
    [["study", "example", "-o", "x", "--map", "height_cm=tall"], 2, "column=field:unit"],
  ] as const)("%j ends with %d", async (args, status, sentence) => {
    const folder = temporaryFolder();
    const run = await callSteelyard(args, { cwd: folder.path });
    expect(run.stderr).toContain(sentence);
    expect(run.status).toBe(status);
    expect(folder.names()).toEqual([]);
  });

  it("judges readers, and hands their errors to the calibration", async () => {
    const folder = temporaryFolder();
    const file = folder.write(
      "readers.csv",
      "child;imke;tomas;size 1;size 2\n1;150,5;152;S;S\n2;160;160;M;M\n3;171;168;L;M\n4;140;;S;S\n5;155;152;M;M\n6;166;165;L;L\n",
    );
    const out = join(folder.path, "errors.json");
    const run = await callSteelyard([
      ...["study", "agreement", file, "--readings", "imke", "tomas", "--as", "arm-mm", "-o", out],
    ]);
    // sqrt((1.5² + 0 + 3² + 3² + 1²) / (2 x 5)): the fourth child has one reading only.
    expect(run.stdout).toMatch(/5 children.*row 4\.\s+Technical error, mm +1\.458 [\s\S]*ICC \(3,k\)/);
    expect(JSON.parse(readFileSync(out, "utf8")).armSdMm).toBeCloseTo(Math.sqrt(2.125), 9);
    const rows40 = Array.from(
      { length: 40 },
      (_, i) => `${80 + i},${145 + i / 2},${(15.5 * ((80 + i) / 100) ** 2 + (i % 3) / 5).toFixed(1)}`,
    ).join("\n");
    const weighed = folder.write("weighed.csv", `lying_length_cm,arm_mm,weight_kg\n${rows40}\n`);
    const site = join(folder.path, "site.json");
    expect(await callSteelyard(["calibrate", weighed, "--errors", out, "-o", site])).toMatchObject({
      status: 0,
    });
    expect(JSON.parse(readFileSync(site, "utf8")).errors.armSdMm).toBeCloseTo(Math.sqrt(2.125), 9);
    const classes = ["study", "agreement", file, "--readings", "size 1", "size 2", "--as", "class"];
    // 5 of 6 agree; by chance 4 + 6 + 2 of 36.
    expect((await callSteelyard([...classes, "--classes", "S", "M", "L"])).stdout).toMatch(/Kappa +0\.75 /);
    expect((await callSteelyard([...classes, "--classes", "S", "M"])).stderr).toContain('"L" is in the file');
  });

  it.each([
    [["share", "--target", "70", "--expected", "80"], 0, /^158 children/],
    [["share", "--expected", "70", "--within", "5"], 0, /^320 children/],
    [["limits", "--within", "0.25"], 0, /^181 children/],
    [["non-inferiority", "--differ", "20", "--margin", "5"], 0, /^628 children/],
    [["calibration", "--sd", "7"], 0, /^189 children/],
    [
      ["model", "example", "--size", "20", "--target", "60", "--seed", "3", "--studies", "50"],
      0,
      /drawn with seed 3/,
    ],
    [["share", "--target", "80", "--expected", "70"], 2, /must be above target/],
    [["share", "--expected", "70"], 2, /--target: give a number/],
  ] as const)("sample-size %j", async (args, status, sentence) => {
    const run = await callSteelyard(["study", "sample-size", ...args]);
    expect([run.status, status === 0 ? run.stdout : run.stderr]).toEqual([
      status,
      expect.stringMatching(sentence),
    ]);
  });

  it("pools three summary files, and refuses what is none", async () => {
    const folder = temporaryFolder();
    const file = folder.write("ward.csv", `length_cm,arm_mm,weight_kg\n${rows}\n`);
    const paths: string[] = [];
    for (const site of ["Alder", "Larch", "Rowan"]) {
      await callSteelyard([
        "study",
        file,
        "--by",
        "length",
        "--site-name",
        site,
        "-o",
        join(folder.path, site),
      ]);
      paths.push(join(folder.path, site, "site-summary.json"));
    }
    const pooled = await callSteelyard(["study", "pool", ...paths]);
    expect([pooled.status, pooled.stdout]).toEqual([
      0,
      expect.stringMatching(/body:length\+arm +within 10 % +3 +90/),
    ]);
    expect(await callSteelyard(["study", "pool", file, ...paths])).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("Cannot use"),
    });
    expect(await callSteelyard(["study", "pool", ...paths.slice(1)])).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("three sites"),
    });
  });
});
