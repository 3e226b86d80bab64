import { readFileSync } from "node:fs";
import { join } from "node:path";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { type Folder, temporaryFolder } from "./run-steelyard.ts";

function run(folder: Folder, ...args: string[]) {
  return callSteelyard(["formulary", ...args], { cwd: folder.path });
}

const ADRENALINE_MAXIMUM = "medicines/adrenaline/uses/arrest/options/by-weight/rule/maximum";
const SIGNER = ["--name", "A. Example", "--role", "pharmacist", "--date", "2026-11-25"];

/** The draft in a file, with one text in it replaced. */
function draftFile(folder: Folder, from = "", to = ""): string {
  const text = writeFormulary(draftFormulary);
  if (!text.includes(from)) throw new Error(`the draft has no ${from}`);
  folder.write("ours.json", from === "" ? text : text.replace(from, to));
  return "ours.json";
}

describe("steelyard formulary check", () => {
  it("finds no fault in the draft, says that it is unsigned, and shows steps to look at", async () => {
    const { status, stdout } = await run(temporaryFolder(), "check");
    expect(status).toBe(0);
    expect(stdout).toMatch(/No fault\.\nNot signed: a draft, not to be used on a patient\./);
    expect(stdout).toMatch(/\* .*: steps from .* just under/);
  });

  it("lists every fault with its place, and takes nothing", async () => {
    const folder = temporaryFolder();
    const bad = JSON.parse(writeFormulary(draftFormulary));
    bad.medicines[0].name = "";
    bad.title = 3;
    folder.write("bad.json", JSON.stringify(bad));
    const { status, stdout, stderr } = await run(folder, "check", "bad.json");
    expect(status).toBe(1);
    expect(stdout).toBe("");
    expect(stderr).toContain("bad.json has 2 faults; nothing of it was taken.");
    expect(stderr).toContain(`* ${bad.medicines[0].id}, name: must not be empty: it is ""`);
    expect(stderr).toContain("* title: must be text: it is 3");
  });

  it.each([
    ['{"id": "a",\n "id": "b"}', 'line 2: field "id" is there twice'],
    ['{\n"id": }', "line 2: is not JSON"],
    ["", "line 1: is not JSON: expected a value, found the end"],
    ["[]", "medicines: is missing"],
  ])("refuses the file %j", async (text, message) => {
    const folder = temporaryFolder();
    folder.write("bad.json", text);
    const { status, stderr } = await run(folder, "check", "bad.json");
    expect(status).toBe(1);
    expect(stderr).toContain(message);
  });

  it("says which file it cannot read, and what is wrong with an option", async () => {
    const folder = temporaryFolder();
    expect(await run(folder, "check", "none.json")).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("Cannot read none.json: there is no such file or folder."),
    });
    expect(await run(folder, "check", "--step", "x")).toMatchObject({ status: 2 });
    expect(await run(folder, "chek")).toMatchObject({ status: 2 });
    expect(await run(folder, "sign", "draft")).toMatchObject({
      status: 2,
      stderr: expect.stringContaining("required option '--name <name>' not specified"),
    });
  });
});

describe("steelyard formulary show", () => {
  it("prints one medicine with doses, sources and marks", async () => {
    const { status, stdout } = await run(temporaryFolder(), "show", "--medicine", "adrenaline");
    expect(status).toBe(0);
    expect(stdout).toContain("10 micrograms/kg of ideal weight, at most 1 mg");
    expect(stdout).toContain("Unsigned draft");
    expect(stdout).not.toContain("## amiodarone");
  });

  it("names the medicines there are for one that is not", async () => {
    const { status, stderr } = await run(temporaryFolder(), "show", "--medicine", "adrenalin");
    expect(status).toBe(1);
    expect(stderr).toMatch(/There is no medicine adrenalin in this formulary\. It has: .*adrenaline/);
  });
});

describe("steelyard formulary diff", () => {
  it("says a changed maximum as a pharmacist reads it", async () => {
    const folder = temporaryFolder();
    const overlay = {
      id: "north-site",
      version: "1",
      title: "North site",
      base: { id: draftFormulary.id, version: draftFormulary.version },
      changes: [
        {
          change: "set",
          at: ADRENALINE_MAXIMUM,
          from: { amount: 1, unit: "mg" },
          to: { amount: 500, unit: "microgram" },
          reason: "an invented change",
        },
      ],
    };
    folder.write("north.json", JSON.stringify(overlay));
    const applied = await run(folder, "overlay", "draft", "north.json", "-o", "ours.json");
    expect(applied.status).toBe(0);
    expect(applied.stderr).toContain("maximum 1 mg → 500 micrograms");
    const { status, stdout } = await run(folder, "diff", "draft", "ours.json");
    expect(status).toBe(0);
    expect(stdout.replaceAll(/\s+/g, " ")).toContain(
      "* adrenaline, use arrest, option by-weight: maximum 1 mg → 500 micrograms",
    );
    expect((await run(folder, "show", "ours.json")).stdout).toContain(
      `* set \`${ADRENALINE_MAXIMUM}\`: an invented change`,
    );

    folder.write("late.json", JSON.stringify({ ...overlay, id: "late" }));
    const refused = await run(folder, "overlay", "ours.json", "late.json", "-o", "later.json");
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain('the base now has {"amount":500,"unit":"microgram"}');
    expect(folder.names()).not.toContain("later.json");
  });

  it("says that there is none", async () => {
    const folder = temporaryFolder();
    const { stdout } = await run(folder, "diff", "draft", draftFile(folder));
    expect(stdout).toBe("the draft that ships and ours.json do not differ.\n");
  });
});

describe("steelyard formulary sign and verify", () => {
  it("signs, holds, and breaks on an edited value, a space and another signing", async () => {
    const folder = temporaryFolder();
    draftFile(folder);
    expect(await run(folder, "verify", "ours.json")).toMatchObject({
      status: 1,
      stderr: expect.stringContaining("Not signed"),
    });
    expect((await run(folder, "sign", "ours.json", ...SIGNER, "-o", "signed.json")).status).toBe(0);
    const verified = await run(folder, "verify", "signed.json");
    expect(verified.status).toBe(0);
    const fingerprint = /Fingerprint ([0-9a-f]{64})\./.exec(verified.stdout)?.[1] ?? "";
    expect((await run(folder, "verify", "signed.json", "--fingerprint", fingerprint)).status).toBe(0);
    expect(
      (await run(folder, "verify", "signed.json", "--fingerprint", fingerprint.replace(/./, "x"))).status,
    ).toBe(1);

    const signed = folder.read("signed.json");
    folder.write("edited.json", signed.replace('"amountPerKg": 10,', '"amountPerKg": 11,'));
    expect((await run(folder, "verify", "edited.json")).stderr).toContain(
      "NOT SIGNED: edited after A. Example signed it",
    );
    folder.write("space.json", signed.replace('"amountPerKg": 10,', '"amountPerKg":  10,'));
    expect((await run(folder, "verify", "space.json")).stderr).toContain(
      "NOT SIGNED: the file is not laid out",
    );
    // Validation would tidy the space away; for the sign-off it is an edit.
    folder.write("inside.json", signed.replace('"name": "adrenaline"', '"name": "adrenaline "'));
    expect((await run(folder, "verify", "inside.json")).stderr).toContain("NOT SIGNED: edited after");
    expect((await run(folder, "check", "edited.json")).stdout).toContain("NOT SIGNED");
  });

  it("takes a second reviewer, and says where one is lacking", async () => {
    const folder = temporaryFolder();
    const alone = await run(folder, "sign", "draft", ...SIGNER, "-o", "alone.json");
    expect(alone.stderr.replaceAll(/\s+/g, " ")).toMatch(
      /One signature only: a second reviewer must sign for its [1-9]\d* high-alert medicines/,
    );
    const second = ["--second-name", "B. Example", "--second-role", "physician", "--second-date"];
    const both = await run(folder, "sign", "draft", ...SIGNER, ...second, "2026-11-26", "-o", "both.json");
    expect(both.status).toBe(0);
    const { status, stdout } = await run(folder, "verify", "both.json");
    expect(status).toBe(0);
    expect(stdout).toContain("; and by B. Example, physician, on 2026-11-26.");
    expect(stdout).not.toContain("One signature only");
    // Neither can the second be taken away again, nor be the first once more, nor be named in part.
    folder.write("stripped.json", folder.read("both.json").replace(/,\s*"second": \{[^}]*\}/, ""));
    expect((await run(folder, "verify", "stripped.json")).stderr).toContain("NOT SIGNED: edited after");
    const same = second.with(1, "a. example");
    expect(await run(folder, "sign", "draft", ...SIGNER, ...same, "2026-11-26")).toMatchObject({
      status: 2,
      stderr: expect.stringContaining("must be somebody else"),
    });
    expect(await run(folder, "sign", "draft", ...SIGNER, ...second.slice(0, 2))).toMatchObject({
      status: 2,
      stderr: expect.stringContaining("--second-role"),
    });
  });

  it("takes no day that does not exist", async () => {
    const folder = temporaryFolder();
    const result = await run(
      folder,
      "sign",
      "draft",
      "--name",
      "A",
      "--role",
      "pharmacist",
      "--date",
      "2026-02-30",
    );
    expect(result.status).toBe(2);
    expect(result.stdout).toBe("");
  });
});

describe("steelyard formulary csv", () => {
  it("goes out, is edited and comes back", async () => {
    const folder = temporaryFolder();
    expect((await run(folder, "csv", "-o", "doses.csv")).status).toBe(0);
    const table = folder.read("doses.csv");
    expect((await run(folder, "csv", "--from", "doses.csv", "-o", "same.json")).stderr).toBe(
      "Nothing was changed.",
    );
    expect(JSON.parse(folder.read("same.json"))).toEqual(draftFormulary);

    const row = /^adrenaline,arrest,by-weight,first,.*$/m.exec(table)?.[0] ?? "";
    expect(row).toMatch(/,10,microgram,kg,ideal,/);
    folder.write("doses.csv", table.replace(row, row.replace(",1,mg", ",0.8,mg")));
    const changed = await run(folder, "csv", "--from", "doses.csv", "-o", "ours.json");
    expect(changed.stderr).toContain("maximum 1 mg → 800 micrograms");
    // As a spreadsheet of another locale saves it.
    folder.write("semicolons.csv", `\ufeff${table.replaceAll(",", ";")}`);
    expect((await run(folder, "csv", "--from", "semicolons.csv", "-o", "x.json")).status).toBe(
      table.includes('"') ? 1 : 0,
    );
  });

  it("lists every fault with row and column, and writes nothing", async () => {
    const folder = temporaryFolder();
    await run(folder, "csv", "-o", "doses.csv");
    const rows = folder.read("doses.csv").split("\n");
    const index = rows.findIndex((row) => row.startsWith("adrenaline,arrest,by-weight,first"));
    rows[index] = rows[index]?.replace(",10,microgram,kg,ideal,", ",ten,mcg,kg,actual,") ?? "";
    folder.write("bad.csv", rows.join("\n"));
    const { status, stderr } = await run(folder, "csv", "--from", "bad.csv", "-o", "out.json");
    expect(status).toBe(1);
    expect(stderr).toContain("bad.csv has 3 faults; nothing of it was taken.");
    expect(stderr).toContain(
      `* row ${index + 1}, column amount: must be a plain number such as 0.5, not "ten"`,
    );
    expect(stderr).toContain(`* row ${index + 1}, column unit:`);
    expect(stderr).toContain(`* row ${index + 1}, column basis:`);
    expect(folder.names()).toEqual(["bad.csv", "doses.csv"]);

    folder.write("broken.csv", 'medicine,use\n"adrenaline,arrest\n');
    expect((await run(folder, "csv", "--from", "broken.csv")).stderr).toContain("broken.csv is no table");
  });
});

describe("steelyard formulary schema", () => {
  it("writes the published schema", async () => {
    const published = new URL("../../../packages/formulary/schemas/formulary.schema.json", import.meta.url);
    const { status, stdout } = await run(temporaryFolder(), "schema");
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual(JSON.parse(readFileSync(published, "utf8")));
    expect(JSON.parse((await run(temporaryFolder(), "schema", "--overlay")).stdout).title).toMatch(/changes/);
  });

  it("says what it cannot write", async () => {
    const folder = temporaryFolder();
    const path = join("no", "such", "folder.json");
    expect(await run(folder, "schema", "-o", path)).toMatchObject({
      status: 1,
      stderr: expect.stringContaining(`Cannot write ${path}`),
    });
  });
});
