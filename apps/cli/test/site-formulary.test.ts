import { readFileSync } from "node:fs";
import { formatQuantity } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { type Folder, temporaryFolder } from "./run-steelyard.ts";

// Each test starts the command once or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const CHILD = ["child", "--weight-kg", "80", "--length-cm", "170"];
const SIGNER = ["--name", "A. Example", "--role", "pharmacist"];
const single = (text: string): string => text.replaceAll(/\s+/g, " ");

function run(folder: Folder, ...args: string[]) {
  return callSteelyard(args, { cwd: folder.path });
}

async function signedFile(folder: Folder, date: string): Promise<string> {
  folder.write("ours.json", writeFormulary(draftFormulary));
  const { status } = await run(
    folder,
    "formulary",
    "sign",
    "ours.json",
    ...SIGNER,
    "--date",
    date,
    "-o",
    "signed.json",
  );
  expect(status).toBe(0);
  return "signed.json";
}

function overlayFile(folder: Folder): string {
  const from = draftFormulary.problemOrder;
  folder.write(
    "order.json",
    JSON.stringify({
      id: "ours",
      version: "1",
      title: "Ours",
      base: { id: draftFormulary.id, version: draftFormulary.version },
      changes: [
        {
          change: "set",
          at: "problemOrder",
          ...(from && { from }),
          to: ["poisoning", "fluids"],
          reason: "as the hospital asked",
        },
      ],
    }),
  );
  return "order.json";
}

describe("steelyard child --formulary", () => {
  it("names who signed, with the fingerprint, and then shows no draft banner", async () => {
    const folder = temporaryFolder();
    const today = new Date().toISOString().slice(0, 10);
    const { status, stdout } = await run(folder, ...CHILD, "--formulary", await signedFile(folder, today));
    expect(status).toBe(0);
    expect(stdout).not.toContain("NOT SIGNED");
    const { fingerprint } = JSON.parse(folder.read("signed.json")).signOff;
    expect(single(stdout)).toContain(
      `signed by A. Example, pharmacist, ${today}; fingerprint ${fingerprint.slice(0, 16)}`,
    );
    expect(stdout).not.toContain("more than a year ago");
  });

  it("says that a sign-off is more than a year old", async () => {
    const folder = temporaryFolder();
    const { stdout } = await run(folder, ...CHILD, "--formulary", await signedFile(folder, "2020-01-31"));
    expect(single(stdout)).toContain("signed on 2020-01-31, more than a year ago: have it reviewed again");
  });

  it.each([
    ["an edited dose", (text: string) => text.replace('"amountPerKg": 20,', '"amountPerKg": 21,')],
    ["one more space", (text: string) => `${text} `],
  ])("refuses a file with %s after it was signed", async (_, edit) => {
    const folder = temporaryFolder();
    const signed = folder.read(await signedFile(folder, "2026-11-25"));
    folder.write("edited.json", edit(signed));
    const { status, stdout, stderr } = await run(folder, ...CHILD, "--formulary", "edited.json");
    expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
    expect(stderr).toContain("edited.json was changed after A. Example signed it on 2026-11-25");
  });

  it("counts a file as unsigned that only says it is signed", async () => {
    const folder = temporaryFolder();
    folder.write("ours.json", writeFormulary({ ...draftFormulary, signed: true }));
    const { stdout } = await run(folder, ...CHILD, "--formulary", "ours.json", "--json");
    expect(JSON.parse(stdout).versions).toMatchObject({ formularySigned: false });
  });

  it("lists every fault of a bad file with its place, and computes nothing", async () => {
    const folder = temporaryFolder();
    folder.write("bad.json", '{ "id": "ours", "id": "theirs" }');
    const { status, stdout, stderr } = await run(folder, ...CHILD, "--formulary", "bad.json");
    expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
    expect(stderr).toContain('line 1: field "id" is there twice');
  });

  it("follows the order of problems of an overlay, and then nobody answers for it", async () => {
    const folder = temporaryFolder();
    const signed = await signedFile(folder, "2026-11-25");
    const { status, stdout } = await run(
      folder,
      ...CHILD,
      "--formulary",
      signed,
      "--overlay",
      overlayFile(folder),
    );
    expect(status).toBe(0);
    const headings = [...stdout.matchAll(/^== (.*) ==$/gm)].map(([, title]) => title);
    expect(headings.slice(0, 2)).toEqual(["Poisoning and reversal", "Fluids"]);
    expect(new Set(headings).size).toBe(headings.length);
    expect(stdout).toContain("NOT SIGNED");
    expect(single(stdout)).toContain("signed without these changes: with them nobody answers for it");
  });
});

describe("steelyard child --choose", () => {
  it("computes the other published dose that the sheet names, and names the default in its place", async () => {
    const folder = temporaryFolder();
    const before = single((await run(folder, ...CHILD)).stdout);
    expect(before).toContain(
      "or 1,500 mg = 30 mL of 50 mg/mL (single maximum): 20 mg/kg, at most 1.5 g (--choose phenytoin.seizure=1-5-g)",
    );
    const after = single((await run(folder, ...CHILD, "--choose", "phenytoin.seizure=1-5-g")).stdout);
    expect(after).toContain(">> 1,500 mg = 30 mL of 50 mg/mL (single maximum)");
    expect(after).toContain("(--choose phenytoin.seizure=2-g)");
  });

  it("names every published dose of every line", async () => {
    const text = single((await run(temporaryFolder(), ...CHILD)).stdout);
    const others = draftFormulary.medicines.flatMap(({ id, uses }) =>
      uses.flatMap(({ id: useId, options, defaultOption }) =>
        options.flatMap((option) =>
          option.id === defaultOption ? [] : [`--choose ${id}.${useId}=${option.id})`],
        ),
      ),
    );
    expect(others.length).toBeGreaterThan(50);
    expect(others.filter((other) => !text.includes(other))).toEqual([]);
  });

  it.each([
    ["phenytoin.seizure", "name the line and the dose"],
    ["phenytoin.none=2-g", "the formulary has no line phenytoin.none"],
    ["phenytoin.seizure=3-g", "phenytoin.seizure has 2-g, 1-5-g"],
  ])("answers %s with what there is", async (choice, message) => {
    const { status, stderr } = await run(temporaryFolder(), ...CHILD, "--choose", choice);
    expect(status).toBe(2);
    expect(stderr).toContain(message);
  });
});

describe("warnings about the child", () => {
  it("stand once above the sheet, and each line refers to them", async () => {
    const { stdout } = await run(temporaryFolder(), "child", "--length-cm", "60");
    const byAge = "The dose goes by age, which is not known: the one for an unknown age is taken.";
    expect(single(stdout).split(byAge).length).toBe(2);
    expect(stdout).toContain("! See (1) above.");
  });
});

describe("the conflicts that docs/formulary.md walks through", () => {
  const page = readFileSync(new URL("../../../docs/formulary.md", import.meta.url), "utf8");
  const ROW =
    /^\| \[(?<name>[^\]]+)\].*? \| `(?<line>[^`]+)` \| `(?<own>[^`]+)`: (?<dose>[^|]+) \| `(?<other>[^`]+)`: (?<otherDose>[^|]+) \| `(?<child>[^`]+)` \|$/gm;
  const rows = [...page.matchAll(ROW)].map(({ groups }) => groups as Record<string, string>);

  it("are ten or more", () => {
    expect(rows.length).toBeGreaterThanOrEqual(10);
  });

  it.each(rows)("$line has both doses and a reason, switched by --choose and by an overlay", async (row) => {
    const { line = "", own = "", other = "", child = "" } = row;
    const [medicineId, useId] = line.split(".");
    const medicine = draftFormulary.medicines.find(({ id }) => id === medicineId);
    const use = medicine?.uses.find(({ id }) => id === useId);
    expect(use?.defaultOption).toBe(own);
    expect(use?.defaultReason).toMatch(/^[A-Z0-9].{15,}\.$/);
    for (const id of [own, other]) {
      expect(use?.options.find((option) => option.id === id)?.citations.length).toBeGreaterThan(0);
    }
    const folder = temporaryFolder();
    folder.write(
      "ours.json",
      JSON.stringify({
        id: "ours",
        version: "1",
        title: "Ours",
        base: { id: draftFormulary.id, version: draftFormulary.version },
        changes: [
          {
            change: "set",
            at: `medicines/${medicineId}/uses/${useId}/defaultOption`,
            from: own,
            to: other,
            reason: "as the hospital decided",
          },
        ],
      }),
    );
    const doses = [
      await doseOf(folder, line, child),
      await doseOf(folder, line, child, "--choose", `${line}=${other}`),
      await doseOf(folder, line, child, "--overlay", "ours.json"),
      await doseOf(folder, line, child, "--overlay", "ours.json", "--choose", `${line}=${own}`),
    ];
    expect(doses).toEqual([row.dose, row.otherDose, row.otherDose, row.dose]);
    expect(row.dose).not.toBe(row.otherDose);
  });

  async function doseOf(folder: Folder, line: string, child: string, ...more: string[]): Promise<string> {
    const { stdout } = await run(folder, "child", ...child.split(" "), ...more, "--json");
    const { dose } = JSON.parse(stdout).sheet.find(({ id }: { id: string }) => id === line);
    return formatQuantity(dose).replaceAll("\u00a0", " ");
  }
});
