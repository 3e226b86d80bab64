import { readFileSync } from "node:fs";
import { join } from "node:path";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { type Folder, type Run, temporaryFolder } from "./run-steelyard.ts";
import { weighedFile } from "./weighed-rows.ts";

/** A paper made in a folder, which is where its file goes. */
function paper(folder: Folder, ...args: string[]): Promise<Run> {
  const output = args.includes("-o") ? [] : ["-o", "out.pdf"];
  return callSteelyard(["paper", ...args, ...output], { cwd: folder.path });
}

/** A profile of invented children who weigh more than the model says. */
async function writeSite(folder: Folder): Promise<void> {
  const input = weighedFile({ count: 120, factor: 1.07 });
  const args = ["calibrate", "-", "--date", "2026-11-25", "--name", "Larch ward", "-o", "site.json"];
  expect((await callSteelyard(args, { input, cwd: folder.path })).status).toBe(0);
}

describe("steelyard paper", () => {
  it.each([
    ["strip on a roll", ["strip", "--page", "roll", "--roll-width-mm", "297"]],
    ["arm band", ["arm-band", "--page", "letter"]],
    ["grid", ["grid", "--page", "a3"]],
    ["grid with waist", ["grid", "--waist"]],
    ["booklet", ["booklet", "--problem", "anaphylaxis"]],
    ["child sheet", ["child", "--length-cm", "136", "--arm-mm", "190", "--problem", "anaphylaxis"]],
    ["labels", ["labels", "--length-cm", "136", "--arm-mm", "190", "--problem", "anaphylaxis"]],
    ["guide", ["guide", "--page", "a3"]],
    ["reading test", ["reading-test"]],
  ])("writes the %s, and nothing else", async (_, args) => {
    const folder = temporaryFolder();
    const run = await paper(folder, ...args, "--date", "2026-11-25");
    expect(run).toMatchObject({ status: 0, stdout: "" });
    expect(run.stderr).toContain("Print at 100 %");
    expect(folder.names()).toEqual(["out.pdf"]);
    expect(folder.read("out.pdf").slice(0, 8)).toBe("%PDF-1.7");
  });

  it("writes a sheet in French that says it is machine-translated", async () => {
    const folder = temporaryFolder();
    const child = ["--length-cm", "136.5", "--arm-mm", "190", "--problem", "anaphylaxis"];
    expect((await paper(folder, "child", ...child, "--language", "fr", "-o", "child.svg")).status).toBe(0);
    const text = folder.read("child-1.svg").replaceAll(/<style>.*?<\/style>|<[^>]+>/g, " ");
    for (const words of ["136,5\u00a0cm", "poids total", "Traduction automatique, non relue."]) {
      expect(text).toContain(words);
    }
  });

  it("writes the same bytes for the same day", async () => {
    const folder = temporaryFolder();
    for (const name of ["one.pdf", "two.pdf"]) {
      expect((await paper(folder, "strip", "--date", "2026-11-25", "-o", name)).status).toBe(0);
    }
    const [one, two] = ["one.pdf", "two.pdf"].map((name) => readFileSync(join(folder.path, name)));
    expect(one?.equals(two as Buffer)).toBe(true);
    expect(folder.names()).toEqual(["one.pdf", "two.pdf"]);
  });

  it("says whose formulary and calibration it was made for, and moves its lines with the calibration", async () => {
    const folder = temporaryFolder();
    await writeSite(folder);
    folder.write("ours.json", writeFormulary({ ...draftFormulary, title: "Larch formulary" }));
    const by = ["--name", "A. Example", "--role", "pharmacist", "--date", "2026-11-20"];
    const signing = ["formulary", "sign", "ours.json", ...by, "-o", "signed.json"];
    expect((await callSteelyard(signing, { cwd: folder.path })).status).toBe(0);
    const own = ["--site", "site.json", "--formulary", "signed.json", "-o", "own.svg"];
    expect((await paper(folder, "strip", ...own)).status).toBe(0);
    expect((await paper(folder, "strip", "-o", "plain.svg")).status).toBe(0);
    // One picture a page.
    expect(folder.names().filter((name) => name.startsWith("plain"))).toHaveLength(8);
    expect(folder.read("plain-4.svg")).toContain("17.5\u00a0kg</text>");
    const text = folder
      .read("own-1.svg")
      .replaceAll(/<style>.*?<\/style>|<[^>]+>/g, " ")
      .replaceAll(/\s+/g, " ");
    expect(text).toContain("Larch formulary, draft 0.1, signed by A. Example, pharmacist, 2026-11-20");
    expect(text).toContain("Calibrated to Larch ward by 120 children");
    // The calibration is not signed, so the strip is a draft still.
    expect(text).toContain("DRAFT, not signed");
    expect(linesOf(folder.read("own-4.svg"))).not.toEqual(linesOf(folder.read("plain-4.svg")));
  });

  it.each([
    ["an unknown page", ["strip", "--page", "b5"], 2, 'There is no page "b5": use a4, a3, letter or roll.'],
    ["a roll without its width", ["strip", "--page", "roll"], 2, "--roll-width-mm 297"],
    [
      "a width that is no number",
      ["strip", "--page", "roll", "--roll-width-mm", "wide"],
      2,
      "--roll-width-mm 297",
    ],
    [
      "a width too narrow for the chart",
      ["strip", "--page", "roll", "--roll-width-mm", "150"],
      1,
      "150 mm is too narrow for the chart",
    ],
    ["a width without a roll", ["strip", "--roll-width-mm", "297"], 2, "goes with --page roll"],
    ["a day that is none", ["grid", "--date", "2026-02-30"], 2, '--date "2026-02-30" is not a day'],
    [
      "a day of expiry before it is made",
      ["grid", "--date", "2026-02-20", "--expires", "2026-02-19"],
      2,
      "must be later",
    ],
    ["a problem that is none", ["booklet", "--problem", "hiccups"], 2, 'There is no problem "hiccups"'],
    ["a child without a problem", ["child", "--length-cm", "136"], 2, "--problem"],
    ["a length no child has", ["child", "--length-cm", "13", "--problem", "arrest"], 1, "cannot be right"],
    [
      "a label sheet that is none",
      ["labels", "--length-cm", "136", "--problem", "arrest", "--page", "1x1"],
      2,
      "70x37",
    ],
    ["a language that is none", ["guide", "--language", "de"], 2, 'There is no paper in "de": use en or fr.'],
    ["a roll for the grid", ["grid", "--page", "roll"], 2, "use a4, a3 or letter"],
    ["a calibration that is not there", ["strip", "--site", "none.json"], 1, "there is no such file"],
    ["a paper that does not exist", ["poster-of-nothing"], 2, "unknown command"],
  ])("refuses %s with a clear word and leaves no file", async (_, args, status, words) => {
    const folder = temporaryFolder();
    const run = await paper(folder, ...args);
    expect(run.status).toBe(status);
    expect(run.stderr).toContain(words);
    expect(folder.names()).toEqual([]);
  });

  it("refuses a calibration of another body model and a formulary with faults, and leaves no file", async () => {
    const folder = temporaryFolder();
    await writeSite(folder);
    const profile = JSON.parse(folder.read("site.json"));
    const old = folder.write("site.json", JSON.stringify({ ...profile, model: "0.9" }));
    const site = await paper(folder, "strip", "--site", old);
    expect(site.status).toBe(1);
    expect(site.stderr).toContain("0.9");
    const faulty = folder.write("ours.json", JSON.stringify({ ...draftFormulary, medicines: [{}] }));
    const formulary = await paper(folder, "strip", "--formulary", faulty);
    expect(formulary.status).toBe(1);
    expect(formulary.stderr).toMatch(/ours\.json has \d+ faults?; nothing of it was taken\./);
    const odd = folder.write("site.json", JSON.stringify({ ...profile, site: "落叶松病房" }));
    const name = await paper(folder, "arm-band", "--site", odd);
    expect(name.status).toBe(1);
    expect(name.stderr).toContain("the typeface has no 落叶松病房");
    expect(folder.names()).toEqual(["ours.json", "site.json"]);
  });

  it("refuses a kind of file it does not write, a folder that is not there, and leaves what was there alone", async () => {
    const folder = temporaryFolder();
    const kind = await paper(folder, "grid", "-o", "out.png");
    expect(kind).toMatchObject({ status: 2, stderr: expect.stringContaining("must end in .pdf") });
    const nowhere = await paper(folder, "arm-band", "-o", "nowhere/out.pdf");
    expect(nowhere).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("there is no such file or folder"),
    });
    expect(folder.names()).toEqual([]);
    folder.write("out.pdf", "kept");
    expect((await paper(folder, "strip", "--page", "b5")).status).toBe(2);
    expect(folder.read("out.pdf")).toBe("kept");
  });

  it("prints its help with the cautions", async () => {
    const { status, stdout } = await callSteelyard(["paper", "--help"]);
    expect(status).toBe(0);
    expect(stdout).toContain("steelyard paper strip --page a4 -o strip.pdf");
    expect(stdout.replaceAll(/\s+/g, " ")).toContain("Weigh the child as soon as you can.");
  });
});

/** The drawn curves of a page. */
function linesOf(svg: string): readonly string[] {
  return svg.match(/d="M[^"]*C[^"]*"/g) ?? [];
}
