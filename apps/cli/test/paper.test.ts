import { readFileSync } from "node:fs";
import { join } from "node:path";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import { CommanderError } from "commander";
import { describe, expect, it, vi } from "vitest";
import { createProgram } from "../src/create-program.ts";
import { CommandFailure } from "../src/exit-status.ts";
import { type Folder, runSteelyard, temporaryFolder } from "./run-steelyard.ts";
import { weighedFile } from "./weighed-rows.ts";

// Each test starts the command once or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

function paper(folder: Folder, ...args: string[]) {
  return runSteelyard(["paper", ...args], { cwd: folder.path });
}

/** What a command fails with, in this process: nothing is started, and where it fails no file may be left. */
async function refusal(folder: Folder, ...args: string[]): Promise<{ status: number; message: string }> {
  const output = args.includes("-o") ? [] : ["-o", join(folder.path, "out.pdf")];
  const program = createProgram().configureOutput({ writeErr: () => {} });
  for (const own of program.commands) own.configureOutput({ writeErr: () => {} });
  try {
    await program.parseAsync(["node", "steelyard", "paper", ...args, ...output]);
  } catch (error) {
    if (error instanceof CommandFailure) return { status: error.status, message: error.message };
    if (error instanceof CommanderError) return { status: 2, message: error.message };
    throw error;
  }
  return { status: 0, message: "" };
}

/** A profile of invented children who weigh more than the model says. */
function writeSite(folder: Folder): void {
  const input = weighedFile({ count: 120, factor: 1.07 });
  const args = ["calibrate", "-", "--date", "2026-11-25", "--name", "Larch ward", "-o", "site.json"];
  expect(runSteelyard(args, { input, cwd: folder.path }).status).toBe(0);
}

describe("steelyard paper", () => {
  it.each([
    ["strip", ["strip", "--page", "a4"]],
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
    const said = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    const run = await refusal(folder, ...args, "--date", "2026-11-25");
    const words = said.mock.calls.flat().join("");
    said.mockRestore();
    expect(run).toEqual({ status: 0, message: "" });
    expect(words).toContain("Print at 100 %");
    expect(folder.names()).toEqual(["out.pdf"]);
    expect(folder.read("out.pdf").slice(0, 8)).toBe("%PDF-1.7");
  });

  it("writes a sheet in French that says it is machine-translated", async () => {
    const folder = temporaryFolder();
    const said = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    const child = ["--length-cm", "136.5", "--arm-mm", "190", "--problem", "anaphylaxis"];
    const output = ["-o", join(folder.path, "child.svg")];
    const run = await refusal(folder, "child", ...child, "--language", "fr", ...output);
    said.mockRestore();
    expect(run).toEqual({ status: 0, message: "" });
    const text = folder.read("child-1.svg").replaceAll(/<style>.*?<\/style>|<[^>]+>/g, " ");
    for (const words of ["136,5\u00a0cm", "poids total", "Traduction automatique, non relue."]) {
      expect(text).toContain(words);
    }
  });

  it("writes the same bytes for the same day, and an SVG for each page", () => {
    const folder = temporaryFolder();
    for (const name of ["one.pdf", "two.pdf"]) {
      expect(paper(folder, "strip", "--date", "2026-11-25", "-o", name).status).toBe(0);
    }
    const [one, two] = ["one.pdf", "two.pdf"].map((name) => readFileSync(join(folder.path, name)));
    expect(one?.equals(two as Buffer)).toBe(true);
    expect(paper(folder, "strip", "-o", "page.svg").status).toBe(0);
    expect(folder.names().filter((name) => name.endsWith(".svg"))).toHaveLength(8);
    expect(folder.read("page-4.svg")).toContain("17.5\u00a0kg</text>");
  });

  it("says whose formulary and calibration it was made for, and moves its lines with the calibration", () => {
    const folder = temporaryFolder();
    writeSite(folder);
    folder.write("ours.json", writeFormulary({ ...draftFormulary, title: "Larch formulary" }));
    const by = ["--name", "A. Example", "--role", "pharmacist", "--date", "2026-11-20"];
    const signing = ["formulary", "sign", "ours.json", ...by, "-o", "signed.json"];
    expect(runSteelyard(signing, { cwd: folder.path }).status).toBe(0);
    const own = ["--site", "site.json", "--formulary", "signed.json", "-o", "own.svg"];
    expect(paper(folder, "strip", ...own).status).toBe(0);
    expect(paper(folder, "strip", "-o", "plain.svg").status).toBe(0);
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
    const run = await refusal(folder, ...args);
    expect(run.status).toBe(status);
    expect(run.message).toContain(words);
    expect(folder.names()).toEqual([]);
  });

  it("refuses a calibration of another body model and a formulary with faults, and leaves no file", async () => {
    const folder = temporaryFolder();
    writeSite(folder);
    const profile = JSON.parse(folder.read("site.json"));
    const old = folder.write("site.json", JSON.stringify({ ...profile, model: "0.9" }));
    const site = await refusal(folder, "strip", "--site", old);
    expect(site.status).toBe(1);
    expect(site.message).toContain("0.9");
    const faulty = folder.write("ours.json", JSON.stringify({ ...draftFormulary, medicines: [{}] }));
    const formulary = await refusal(folder, "strip", "--formulary", faulty);
    expect(formulary.status).toBe(1);
    expect(formulary.message).toMatch(/ours\.json has \d+ faults?; nothing of it was taken\./);
    const odd = folder.write("site.json", JSON.stringify({ ...profile, site: "落叶松病房" }));
    const name = await refusal(folder, "arm-band", "--site", odd);
    expect(name.status).toBe(1);
    expect(name.message).toContain("the typeface has no 落叶松病房");
    expect(folder.names()).toEqual(["ours.json", "site.json"]);
  });

  it("refuses a kind of file it does not write, a folder that is not there, and leaves what was there alone", async () => {
    const folder = temporaryFolder();
    const kind = await refusal(folder, "grid", "-o", join(folder.path, "out.png"));
    expect(kind).toMatchObject({ status: 2, message: expect.stringContaining("must end in .pdf") });
    const nowhere = await refusal(folder, "arm-band", "-o", join(folder.path, "nowhere/out.pdf"));
    expect(nowhere).toMatchObject({
      status: 1,
      message: expect.stringContaining("there is no such file or folder"),
    });
    expect(folder.names()).toEqual([]);
    folder.write("out.pdf", "kept");
    expect((await refusal(folder, "strip", "--page", "b5")).status).toBe(2);
    expect(folder.read("out.pdf")).toBe("kept");
  });

  it("prints its help with the cautions", () => {
    const { status, stdout } = runSteelyard(["paper", "--help"]);
    expect(status).toBe(0);
    expect(stdout).toContain("steelyard paper strip --page a4 -o strip.pdf");
    expect(stdout.replaceAll(/\s+/g, " ")).toContain("Weigh the child as soon as you can.");
  });
});

/** The drawn curves of a page. */
function linesOf(svg: string): readonly string[] {
  return svg.match(/d="M[^"]*C[^"]*"/g) ?? [];
}
