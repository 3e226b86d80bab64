import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { BIN, temporaryFolder } from "./run-steelyard.ts";
import { HEADER, weighedFile, weighedRows } from "./weighed-rows.ts";

// Each test starts the command once or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const heavy = weighedFile({ count: 120, factor: 1.07 });

/** Calibrates a text through standard input; the profile comes on standard output. */
async function calibrate(input: string, ...args: string[]) {
  const run = await callSteelyard(["calibrate", "-", "--date", "2026-11-25", ...args], { input });
  return { ...run, profile: run.stdout === "" ? undefined : JSON.parse(run.stdout) };
}

describe("steelyard calibrate", () => {
  it("writes a profile of everything the site's children tell, and says whether it helps", async () => {
    const folder = temporaryFolder();
    const input = folder.write("rows.csv", heavy);
    const run = await callSteelyard([
      "calibrate",
      input,
      "-o",
      join(folder.path, "site.json"),
      "--name",
      "Larch ward",
      "--date",
      "2026-11-25",
    ]);
    expect([run.status, run.stdout]).toEqual([0, ""]);
    expect(run.stderr).toMatch(/120 rows: 120 used \(\d with a note\), 0 left out\./);
    expect(run.stderr).toContain("Weighed from 2026-01-10 to 2026-06-19.");
    expect(run.stderr).toMatch(/It helps: [\d.]+ more of 100 estimates come within 10 % of the scale/);
    expect(run.stderr).toContain("Nobody has signed this profile");
    expect(run.stderr).toContain("Weigh the child as soon as you can.");
    expect(folder.names(), "nothing else is left").toEqual(["rows.csv", "site.json"]);

    const profile = JSON.parse(folder.read("site.json"));
    expect(profile).toMatchObject({
      format: "steelyard-site-profile",
      formatVersion: 1,
      site: "Larch ward",
      created: "2026-11-25",
      signed: false,
      evidence: { children: 120, leftOut: [], dates: { from: "2026-01-10", to: "2026-06-19" } },
    });
    const { before, after, shiftWithinPercent, childrenForOnePercent } = profile.evidence;
    // The rows weigh 7 % more than the estimate: 1 / 1.07 - 1 = -6.5 %.
    expect(Math.abs(before.meanErrorPercent + 6.5)).toBeLessThan(0.5);
    expect(Math.abs(after.meanErrorPercent)).toBeLessThan(1);
    expect(after.within10Percent).toBeGreaterThan(before.within10Percent);
    expect(shiftWithinPercent).toBeGreaterThan(0);
    expect(childrenForOnePercent).toBeGreaterThan(0);
    expect(profile.population.shift).toBeGreaterThan(0);
  });

  it("moves the estimates of child and weigh by what was learnt, and names the site", async () => {
    const folder = temporaryFolder();
    folder.write("rows.csv", heavy);
    const site = join(folder.path, "site.json");
    await callSteelyard(["calibrate", join(folder.path, "rows.csv"), "-o", site, "--name", "Larch ward"]);
    const child = ["child", "--length-cm", "120", "--arm-mm", "180", "--sex", "m"];
    const plain = JSON.parse((await callSteelyard([...child, "--json"])).stdout);
    const own = await callSteelyard([...child, "--json", "--site", site]);
    const report = JSON.parse(own.stdout);
    expect(plain.versions.site).toBeUndefined();
    expect(report.versions.site).toMatchObject({ name: "Larch ward", signed: false });
    expect(own.stderr).toContain("Calibrated to Larch ward by 120 children");
    const ratio = report.weight.totalKg / plain.weight.totalKg;
    expect(ratio).toBeGreaterThan(1.04);
    expect(ratio).toBeLessThan(1.1);

    const text = (await callSteelyard([...child, "--site", site])).stdout;
    expect(text).toMatch(/! Calibrated to Larch ward by 120 children[^!]+not signed by anybody\./);
    expect(text.replaceAll(/\s+/g, " ")).toMatch(/body model \S+, site Larch ward \(\d{4}-\d\d-\d\d\)/);
    const weigh = await callSteelyard(["weigh", "-", "--site", site], {
      input: "lying_length_cm,arm_mm,sex\n120,180,m\n",
    });
    expect(weigh.stderr).toContain("Calibrated to Larch ward by 120 children");
    const total = Number(weigh.stdout.split("\n")[1]?.split(",")[3]);
    expect(Math.abs(total - report.weight.totalKg)).toBeLessThanOrEqual(0.005_000_1);
  });

  it("counts the fate of every row and uses the rest", async () => {
    const rows = weighedRows({ count: 40, factor: 1 });
    const bad = [
      "Larch,120,180,m,,2026-01-10",
      "Larch,120,180,m,NA,2026-01-10",
      "Larch,1.2,180,m,22,2026-01-10",
      "Larch,30,90,m,2,2026-01-10",
      "Larch,,180,m,22,2026-01-10",
      "Larch,120,180,m,abc,2026-01-10",
      "Larch,120,180,m,60,in May",
    ];
    const { status, stderr, profile } = await calibrate(`${[HEADER, ...bad, ...rows].join("\n")}\n`);
    expect(status).toBe(0);
    expect(stderr).toContain(
      "47 rows: 41 used (1 with a note), 6 left out: scale weight missing 2, length out of limits 1",
    );
    expect(stderr).toContain("length out of range 1");
    expect(stderr).toContain("scale weight not a number 1");
    expect(stderr).toContain("Dates that are no day such as 2026-11-25, and were not used: 1.");
    expect(stderr).toContain("Scale weights far outside what was measured predicts: row 7.");
    expect(stderr).toContain("Not read: ward.");
    expect(profile.evidence.children).toBe(41);
    expect(profile.evidence.leftOut).toContainEqual({ reason: "scale weight missing", rows: 2 });
    expect(profile.evidence.leftOut.reduce((sum: number, { rows }: { rows: number }) => sum + rows, 0)).toBe(
      6,
    );
  });

  it("knows the same rows again in another order, with other columns, marks and units", async () => {
    const rows = weighedRows({ count: 30, factor: 1 });
    const first = (await calibrate(`${[HEADER, ...rows].join("\n")}\n`)).profile;
    const shuffled = rows.toReversed().map((row) => {
      const [, length = "", arm, sex, weight = "", date] = row.split(",");
      return [date, weight.replace(".", ","), sex, length.replace(".", ","), `${Number(arm) / 10} cm`].join(
        ";",
      );
    });
    const second = (
      await calibrate(
        `${["date;weight_kg;sex;lying_length_cm;arm_mm", ...shuffled].join("\n")}\n`.replaceAll(
          /(\d)\.(\d+ cm)/g,
          "$1,$2",
        ),
      )
    ).profile;
    expect(second.evidence.rowsSha256).toBe(first.evidence.rowsSha256);
    expect(Math.abs(second.population.shift - first.population.shift)).toBeLessThan(1e-9);
    const changed = [HEADER, ...rows.slice(1), rows[0]?.replace(/[\d.]+(?=,2026)/, "13.3")].join("\n");
    expect((await calibrate(changed)).profile.evidence.rowsSha256).not.toBe(first.evidence.rowsSha256);
  });

  it("takes the site's own measurement errors and keeps them in the profile", async () => {
    const folder = temporaryFolder();
    const errors = folder.write("errors.json", '{ "armSdMm": 2.1 }');
    expect((await calibrate(heavy, "--errors", errors)).profile.errors).toMatchObject({
      armSdMm: 2.1,
      carerLogSd: 0.097,
    });
    const wrong = folder.write("wrong.json", '{ "armSdMm": "2.1", "lengthSdCm": { "lying": 3 } }');
    const run = await calibrate(heavy, "--errors", wrong);
    expect([run.status, run.stdout]).toEqual([1, ""]);
    expect(run.stderr).toContain("armSdMm must be a number.");
    expect(run.stderr).toContain("lengthSdCm.lying must be an object.");
  });
});

describe("steelyard calibrate refuses", () => {
  it.each([
    [
      1,
      weighedFile({ count: 19, factor: 1 }),
      [],
      "A calibration needs at least 20 children who were measured and weighed, and there are 19",
    ],
    [1, `${HEADER}\n`, [], "and there are 0"],
    [
      1,
      "lying_length_cm,arm_mm\n136,190\n",
      [],
      "weight_kg is required. The header reads: lying_length_cm, arm_mm.",
    ],
    [1, "weight_kg,arm_mm\n136,190\n", [], "No column holds a length or an age"],
    [1, "", [], "it is empty"],
    [1, "\n\n", [], "blank lines only"],
    [1, `${HEADER}\nLarch,"136,190\n`, [], "A quotation mark is opened and never closed"],
    [2, heavy, ["--date", "25.11.2026"], '"25.11.2026" is no day such as 2026-11-25'],
    [2, heavy, ["--date", "2026-02-30"], '"2026-02-30" is no day'],
    [2, heavy, ["--name", " "], "give the site a name"],
    [2, heavy, ["--frobnicate"], "unknown option"],
    [1, heavy, ["--errors", "absent.json"], "there is no such file or folder"],
  ] as const)("%d: case %$", async (status, input, args, sentence) => {
    const run = await callSteelyard(["calibrate", "-", ...args], { input });
    expect(run.stderr).toContain(sentence);
    expect([run.status, run.stdout]).toEqual([status, ""]);
  });

  it("rows whose weights are other children's", async () => {
    const rows = weighedRows({ count: 100, factor: 1 }).map((row) => row.split(","));
    const mixed = rows.map((row, i) => row.with(4, rows[(i * 37 + 11) % 100]?.[4] as string).join(","));
    const { status, stderr, stdout } = await calibrate([HEADER, ...mixed].join("\n"));
    expect(stderr).toMatch(
      /Even at its best the estimate comes within 20 % of the scale in \d+ % of these children only/,
    );
    expect([status, stdout]).toEqual([1, ""]);
  });

  it("to leave half a profile when the disk fails, and keeps the one that was there", () => {
    const folder = temporaryFolder();
    folder.write("rows.csv", heavy);
    folder.write("site.json", "the profile of last year\n");
    // A limit on the size of files stands for a full disk: one block of 1 kB.
    const script = `ulimit -f 1; trap '' XFSZ; exec "$0" "$@"`;
    const { status, stderr } = spawnSync(
      "bash",
      ["-c", script, process.execPath, BIN, "calibrate", "rows.csv", "-o", "site.json"],
      { cwd: folder.path, encoding: "utf8" },
    );
    expect(stderr).toContain("Cannot write site.json: the file would be larger than allowed.");
    expect(status).toBe(1);
    expect(folder.read("site.json")).toBe("the profile of last year\n");
    expect(folder.names()).toEqual(["rows.csv", "site.json"]);
  });

  it("to write anything when it is interrupted", async () => {
    const folder = temporaryFolder();
    const site = join(folder.path, "site.json");
    const command = spawn(process.execPath, [BIN, "calibrate", "-", "-o", site]);
    let stderr = "";
    command.stderr.on("data", (chunk: Buffer) => {
      stderr += chunk.toString();
    });
    // More than the head that is looked at first, and never an end.
    command.stdin.on("error", () => {});
    command.stdin.write(`${HEADER}\n${`${weighedRows({ count: 1, factor: 1 })[0]}\n`.repeat(3000)}`);
    await vi.waitFor(() => expect(stderr).toContain("Not read: ward."), { timeout: 30_000 });
    command.kill("SIGINT");
    const [status] = await once(command, "exit");
    expect(status).toBe(1);
    expect(stderr).toContain("Interrupted; no result was written.");
    expect(existsSync(site)).toBe(false);
    expect(folder.names()).toEqual([]);
  });

  it("an output that is the input", async () => {
    const folder = temporaryFolder();
    const input = folder.write("rows.csv", heavy);
    expect(await callSteelyard(["calibrate", input, "-o", input])).toMatchObject({ status: 2 });
    expect(folder.read("rows.csv")).toBe(heavy);
  });
});

describe("--site refuses a profile", async () => {
  const profile = (await calibrate(heavy)).stdout;
  const edit = (pattern: RegExp, text: string): string => profile.replace(pattern, text);

  it.each([
    ["an empty file", "", "it is not JSON"],
    ["half a file", profile.slice(0, 300), "it is not JSON"],
    ["another object", "{}", "It is no site profile: make one with steelyard calibrate."],
    [
      "a later format",
      edit(/"formatVersion": 1/, '"formatVersion": 9'),
      "format 9, which is later than this software",
    ],
    [
      "another model",
      edit(/"model": "\w+"/, '"model": "another"'),
      /It was made for body model another, and this is body model \S+: its shift means something else here\. Calibrate again from the rows\./,
    ],
    [
      "a shift too far",
      edit(/"shift": [\d.-]+/, '"shift": 9'),
      /population\.shift must be within −\d\.\d+ and \d\.\d+, and is 9\./,
    ],
    [
      "a shift that is a text",
      edit(/"shift": [\d.-]+/, '"shift": "much"'),
      "population.shift must be a number.",
    ],
    ["a field taken away", edit(/"armSdMm": [\d.]+,/, ""), "errors.armSdMm is missing."],
    [
      "too few children",
      edit(/"children": \d+/, '"children": 3'),
      "evidence.children must be 20 or more, and is 3.",
    ],
    [
      "a short fingerprint",
      edit(/"rowsSha256": "\w{8}/, '"rowsSha256": "'),
      "evidence.rowsSha256 must be 64 hexadecimal digits.",
    ],
  ])("%s", async (_, text, sentence) => {
    expect(text).not.toBe(profile);
    const folder = temporaryFolder();
    const site = folder.write("site.json", text);
    const child = await callSteelyard(["child", "--length-cm", "136", "--arm-mm", "190", "--site", site]);
    const weigh = await callSteelyard(["weigh", "-", "--site", site], { input: "lying_length_cm\n136\n" });
    for (const run of [child, weigh]) {
      expect(run.stderr).toMatch(sentence);
      expect([run.status, run.stdout]).toEqual([1, ""]);
    }
  });

  it("that is not there, or is a folder", async () => {
    const folder = temporaryFolder();
    const run = (path: string) => callSteelyard(["child", "--length-cm", "136", "--site", path]);
    expect(await run(join(folder.path, "absent.json"))).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("there is no such file or folder"),
    });
    expect(await run(folder.path)).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("it is a folder"),
    });
  });
});
