import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { buildTransport } from "@steelyard/study/transport";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { loadNhanes } from "../src/nhanes/load-nhanes.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "steelyard-nhanes-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

function put(name: string, bytes: Uint8Array | string): void {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), bytes);
}

const column = (name: string) => ({ name, length: 8 });
const bodyMeasures = buildTransport([
  {
    member: "BMX_C",
    columns: ["SEQN", "BMXWT", "BMXRECUM", "BMXHT", "BMXARMC", "BMIWT"].map(column),
    rows: [
      [101, 12.3, 88.1, 87.2, 15.2, "."],
      [102, 70.5, ".", 170.2, 30.1, "."],
      [103, 9.9, 75, ".", ".", 3],
      [104, 20, ".", 115, 18, "."],
    ],
  },
]);
const demographics = buildTransport([
  {
    member: "DEMO_C",
    columns: ["SEQN", "RIAGENDR", "RIDAGEYR", "RIDAGEEX", "RIDAGEMN"].map(column),
    rows: [
      [103, 2, 0, ".", 10],
      [102, 1, 34, 410, 409],
      [101, 1, 2, 28, 27],
    ],
  },
]);
const tidy = `cycle,seqn,sex,age_months,age_years,weight_kg,recumbent_length_cm,standing_height_cm,mac_cm,wt_comment
2003-2004,101,M,28,2,12.3,88.1,87.2,15.2,
2003-2004,103,F,10,0,9.8,75,,,3
2005-2006,7,F,60,5,18,,108,16.5,
`;

describe("loadNhanes()", () => {
  it("joins body measures to demographics: children only, what was not measured absent", () => {
    put("BMX_C.XPT", bodyMeasures);
    put("below/demo_c.xpt.gz", gzipSync(demographics));
    const load = loadNhanes(folder);
    // 102 is an adult; 104 is not in the demographics.
    expect(load.children).toEqual([
      {
        cycle: "2003-2004",
        seqn: 101,
        sex: "m",
        ageMonths: 28,
        ageYears: 2,
        weightKg: 12.3,
        recumbentLengthCm: 88.1,
        standingHeightCm: 87.2,
        armCm: 15.2,
      },
      {
        cycle: "2003-2004",
        seqn: 103,
        sex: "f",
        ageMonths: 10,
        ageYears: 0,
        weightKg: 9.9,
        recumbentLengthCm: 75,
        weightComment: 3,
      },
    ]);
    expect([...load.files].sort()).toEqual(["BMX_C.XPT", "demo_c.xpt.gz"]);
  });

  it("counts a child in both forms once, says how many differ, and sorts by number", () => {
    put("BMX_C.XPT", bodyMeasures);
    put("DEMO_C.XPT", demographics);
    put("nhanes_children.csv.gz", gzipSync(tidy));
    const load = loadNhanes(folder);
    expect(load.children.map(({ seqn }) => seqn)).toEqual([7, 101, 103]);
    // 103 weighs 9.9 kg in one and 9.8 kg in the other.
    expect(load).toMatchObject({ inBoth: 2, differing: 1 });
  });

  it("says what to download when the folder holds nothing of NHANES", () => {
    put("notes.txt", "nothing");
    expect(() => loadNhanes(folder)).toThrow(`Cannot fit as ${folder} holds no NHANES file`);
    expect(() => loadNhanes(folder)).toThrow("BMX_*.XPT and DEMO_*.XPT from the CDC");
  });

  it("says which file is missing when body measures come without demographics", () => {
    put("BMX_C.XPT", bodyMeasures);
    expect(() => loadNhanes(folder)).toThrow("Cannot use BMX_C.XPT without DEMO_C.XPT");
  });

  it.each([
    ["a web page", "BMX_C.XPT", "<!DOCTYPE html><html>", "not-a-transport-file"],
    ["a transport file cut short", "BMX_C.XPT", bodyMeasures.subarray(0, 1500), "truncated"],
    ["a transport file of version 8", "BMX_C.XPT", "HEADER RECORD*******LIBV8   HEADER", "version 8"],
    [
      "a gzip file cut short",
      "BMX_C.XPT.gz",
      gzipSync(bodyMeasures).subarray(0, 100),
      "unexpected end of file",
    ],
    ["what is not gzip at all", "BMX_C.XPT.gz", bodyMeasures, "incorrect header"],
    ["a tidy file whose quotes do not close", "nhanes_children.csv", 'cycle,seqn\n"2003,1\n', "quote"],
  ])("names the file and the fault of %s", (_, name, bytes, fault) => {
    put(name, bytes);
    put("DEMO_C.XPT", demographics);
    expect(() => loadNhanes(folder)).toThrow(join(folder, name));
    expect(() => loadNhanes(folder)).toThrow(new RegExp(fault, "i"));
  });

  it("says that the folder is not there", () => {
    const missing = join(folder, "missing");
    expect(() => loadNhanes(missing)).toThrow(`Cannot fit as there is no folder ${missing}`);
  });
});
