import { globSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { chooseDecimals } from "./choose-decimals.ts";
import { foldColumn } from "./fold-column.ts";
import { makeGrowthTables } from "./make-growth-tables.ts";
import { readLmsFile } from "./read-lms-file.ts";

const committed = fileURLToPath(new URL("../../../packages/core/src/growth/reference/", import.meta.url));
const folder = process.env.STEELYARD_DATA;
const notice = folder ? "" : " (skipped: STEELYARD_DATA is not set)";

describe("foldColumn()", () => {
  it("writes value, slope and second differences, five bits to a character", () => {
    // 3, then +1, then second differences 0 and -1; zigzag 6, 2, 0, 3.
    expect(foldColumn([3, 4, 5, 5])).toBe("GCAD");
    // 500 is 1000 in zigzag: 8 + 31 x 32; the first character says that another follows.
    expect(foldColumn([500])).toBe("of");
  });

  it("throws on a number that is not whole", () => {
    expect(() => foldColumn([0.5])).toThrow(RangeError);
  });
});

describe("readLmsFile()", () => {
  it("says which row is broken and how", () => {
    const head = "source,indicator,sex,x_name,x,L,M,S\n";
    expect(() => readLmsFile(`${head}A,b,M,c,1,1,2,\n`)).toThrow("row 1 has no S");
    expect(() => readLmsFile(`${head}A,b,M,c,1,1,two,3\n`)).toThrow("no number: two");
  });
});

describe("chooseDecimals()", () => {
  it("keeps printed decimals when they are few, and cuts many to what 0.0005 z needs", () => {
    expect(chooseDecimals([{ x: "1", L: "1", M: "49.8842", S: "0.03795" }])).toEqual({ L: 0, M: 4, S: 5 });
    const { L, M, S } = chooseDecimals([{ x: "1", L: "-1.295960857", M: "49.28639612", S: "0.05008556" }]);
    expect(L + M + S).toBeLessThan(14);
  });
});

describe("makeGrowthTables()", () => {
  it("says which figures are missing", () => {
    expect(() => makeGrowthTables(new Map())).toThrow("the file has no WHO2006 weight_for_length_kg M");
  });

  it.skipIf(!folder)(`makes the committed files byte for byte${notice}`, () => {
    const tables = makeGrowthTables(readLmsFile(readFileSync(join(folder ?? "", "growth_lms.csv"), "utf8")));
    const names = globSync("*.json", { cwd: committed }).map((file) => basename(file));
    expect([...tables.keys()].sort()).toEqual(names.sort());
    for (const [name, text] of tables) expect(readFileSync(join(committed, name), "utf8")).toBe(text);
  });
});
