import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { readTransport, type TransportFile } from "@steelyard/study/transport";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import { loadNhanes } from "../src/nhanes/load-nhanes.ts";

const folder = process.env.STEELYARD_DATA;
const notice = folder ? "" : " (skipped: STEELYARD_DATA is not set)";

interface Checked {
  readonly n: number;
  readonly sum?: number;
  readonly min?: number;
  readonly max?: number;
}

/** Made by R's own reader, package foreign: see independent/README.md. */
const byR: { readonly files: Record<string, { rows: number; columns: Record<string, Checked> }> } =
  JSON.parse(readFileSync(new URL("../independent/xport.json", import.meta.url), "utf8"));

// Numbers of records that the CDC's documentation of each file gives, source nhanes (memory).
const records = {
  "BMX_C.XPT": 9643,
  "BMX_D.XPT": 9950,
  "BMX_I.XPT": 9544,
  "DEMO_C.XPT": 10122,
  "DEMO_D.XPT": 10348,
  "DEMO_I.XPT": 9971,
} as const;
const names = Object.keys(records) as readonly (keyof typeof records)[];

/** Column of the tidy file, and where it comes from. */
const origin = {
  age_years: "RIDAGEYR",
  weight_kg: "BMXWT",
  recumbent_length_cm: "BMXRECUM",
  standing_height_cm: "BMXHT",
  mac_cm: "BMXARMC",
  waist_cm: "BMXWAIST",
  upper_arm_length_cm: "BMXARML",
  upper_leg_length_cm: "BMXLEG",
  calf_cm: "BMXCALF",
  thigh_cm: "BMXTHICR",
  triceps_mm: "BMXTRI",
  subscapular_mm: "BMXSUB",
  head_cm: "BMXHEAD",
  wtmec2yr: "WTMEC2YR",
  wt_comment: "BMIWT",
  len_comment: "BMIRECUM",
  ht_comment: "BMIHT",
  arm_comment: "BMIARMC",
  status: "BMDSTATS",
} as const;

describe.skipIf(folder === undefined)(`genuine NHANES files${notice}`, () => {
  const files = new Map<string, TransportFile>();

  beforeAll(() => {
    const xpt = join(folder ?? "", "raw", "nhanes", "xpt");
    for (const name of readdirSync(xpt)) {
      const result = readTransport(gunzipSync(readFileSync(join(xpt, name))));
      if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.error)}`);
      files.set(name.replace(/\.gz$/, ""), result.value);
    }
  });

  const file = (name: string): TransportFile => {
    const found = files.get(name);
    if (found === undefined) throw new Error(`${name} is not among the files`);
    return found;
  };

  it.each(names)("%s has the records the CDC says", (name) => {
    expect(file(name).member).toBe(name.replace(".XPT", ""));
    expect(file(name).rows).toBe(records[name]);
  });

  it.each(names)("%s has in every column what R reads there", (name) => {
    const theirs = byR.files[name];
    expect(file(name).rows).toBe(theirs?.rows);
    expect([...file(name).columns.keys()]).toEqual(Object.keys(theirs?.columns ?? {}));
    for (const [column, values] of file(name).columns) {
      const numbers = values.filter((value) => typeof value === "number");
      const expected = theirs?.columns[column] as Checked;
      const near = (ours: number, other: number | undefined): void => {
        // R printed 15 digits, and added in another order.
        expect(Math.abs(ours - (other ?? Number.NaN)), `${column}`).toBeLessThanOrEqual(
          1e-13 * Math.abs(ours),
        );
      };
      expect(numbers.length, column).toBe(expected.n);
      if (numbers.length === 0) continue;
      near(
        numbers.reduce((sum, value) => sum + value, 0),
        expected.sum,
      );
      near(Math.min(...numbers), expected.min);
      near(Math.max(...numbers), expected.max);
    }
  });

  it("hold every value of the tidy file, cell by cell", () => {
    const tidy: Record<string, string>[] = parse(
      gunzipSync(readFileSync(join(folder ?? "", "nhanes_children.csv.gz"))),
      { columns: true },
    );
    let children = 0;
    const differing: string[] = [];
    for (const [letter, cycle] of [
      ["C", "2003-2004"],
      ["D", "2005-2006"],
      ["I", "2015-2016"],
    ]) {
      const rowOf = new Map<unknown, Record<string, unknown>>();
      for (const name of [`DEMO_${letter}.XPT`, `BMX_${letter}.XPT`]) {
        const { columns } = file(name);
        columns.get("SEQN")?.forEach((seqn, row) => {
          const person = rowOf.get(seqn) ?? {};
          for (const [column, values] of columns) if (values[row] !== undefined) person[column] = values[row];
          rowOf.set(seqn, person);
        });
      }
      for (const child of tidy.filter((row) => row.cycle === cycle)) {
        children++;
        const person = rowOf.get(Number(child.seqn)) ?? {};
        const ageMonths = person.RIDAGEEX ?? person.RIDEXAGM ?? person.RIDAGEMN;
        if (!same(child.age_months, ageMonths)) differing.push(`${child.seqn} age_months`);
        if ((child.sex === "M" ? 1 : 2) !== person.RIAGENDR) differing.push(`${child.seqn} sex`);
        for (const [column, source] of Object.entries(origin)) {
          if (!same(child[column], person[source])) differing.push(`${child.seqn} ${column}`);
        }
      }
    }
    expect(differing).toEqual([]);
    expect(children).toBe(14_124);
  });

  it("agree with the tidy file for every child that loadNhanes() finds in both", () => {
    const load = loadNhanes(folder ?? "");
    expect({ inBoth: load.inBoth, differing: load.differing }).toEqual({ inBoth: 14_124, differing: 0 });
    expect(new Set(load.children.map(({ seqn }) => seqn)).size).toBe(load.children.length);
  });
});

/** Whether a cell of the tidy file says the same as a value: both absent, or equal to the digits it prints. */
function same(cell: string | undefined, value: unknown): boolean {
  if (cell === undefined || cell === "" || value === undefined)
    return (cell ?? "") === "" && value === undefined;
  return Math.abs(Number(cell) - Number(value)) <= 1e-9 * Math.abs(Number(value));
}
