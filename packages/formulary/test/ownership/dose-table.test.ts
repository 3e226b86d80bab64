import { draftFormulary } from "@steelyard/formulary";
import {
  compareFormularies,
  DOSE_TABLE_COLUMNS,
  type DoseTableRow,
  describeDifference,
  doseTable,
  readDoseTable,
} from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { edited, useOf } from "./loose.ts";

const table = doseTable(draftFormulary);

function find(medicine: string, use: string, part = "first"): number {
  const index = table.findIndex((row) => row.medicine === medicine && row.use === use && row.part === part);
  if (index < 0) throw new Error(`no row ${medicine} ${use} ${part}`);
  return index;
}

/** The table with cells of one row replaced, read back. */
function read(index: number, cells: Partial<DoseTableRow>) {
  return readDoseTable(
    draftFormulary,
    table.map((row, at) => (at === index ? { ...row, ...cells } : row)),
  );
}

describe("the dose table", () => {
  it("has a row for every rule of the draft", () => {
    const keys = table.map(({ medicine, use, option, part }) => [medicine, use, option, part].join());
    expect(new Set(keys).size).toBe(table.length);
    for (const medicine of draftFormulary.medicines) {
      for (const use of medicine.uses) {
        expect(keys.some((key) => key.startsWith(`${medicine.id},${use.id},`))).toBe(true);
      }
    }
  });

  it("gives the same formulary back, in any order of its rows", () => {
    expect(readDoseTable(draftFormulary, table.toReversed())).toEqual({ ok: true, value: draftFormulary });
  });

  it.each<[string, number, Partial<DoseTableRow>, RegExp]>([
    ["a dose", find("lorazepam", "seizure"), { amount: "0.09" }, /dose 0\.1 → 0\.09 mg\/kg/],
    ["a maximum", find("lorazepam", "seizure"), { maximum: "2" }, /maximum 4 → 2 mg/],
    ["no maximum", find("lorazepam", "seizure"), { maximum: "", maximum_unit: "" }, /maximum removed: 4 mg/],
    [
      "a minimum",
      find("lorazepam", "seizure"),
      { minimum: "200", minimum_unit: "microgram" },
      /minimum added: 200/,
    ],
    ["a basis", find("lorazepam", "seizure"), { basis: "total" }, /basis "ideal" → "total"/],
    ["no accepted range", find("lorazepam", "seizure"), { low: "", high: "" }, /accepted removed/],
    ["a later dose", find("amiodarone", "arrest", "later 1"), { maximum: "200" }, /maximum 150 → 200 mg/],
  ])("brings back %s", (_, index, cells, sentence) => {
    const result = read(index, cells);
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    const differences = compareFormularies(draftFormulary, result.value).map(describeDifference);
    expect(differences).toHaveLength(1);
    expect(differences[0]).toMatch(sentence);
    expect(doseTable(result.value)[index]).toMatchObject(cells);
    expect(result.value.signed).toBe(false);
  });

  it("brings back the edges of bands", () => {
    const moved = edited((f) => {
      const { bands } = useOf(f, "midazolam", "seizure-buccal").options[1].rule;
      bands[0].highMonths = 14;
      bands[1].lowMonths = 14;
    });
    expect(readDoseTable(draftFormulary, doseTable(moved))).toEqual({ ok: true, value: moved });
  });

  it("brings back the edges and starts of an infusion by age", () => {
    const moved = edited((f) => {
      const { bands, whenAgeUnknown } = useOf(f, "aminophylline", "asthma-infusion").options[0].rule;
      bands[0].highMonths = 96;
      bands[1].lowMonths = 96;
      bands[1].rule.startPerKg = 0.6;
      whenAgeUnknown.startPerKg = 0.5;
    });
    expect(readDoseTable(draftFormulary, doseTable(moved))).toEqual({ ok: true, value: moved });
  });

  it.each<[Partial<DoseTableRow>, string, string]>([
    [{ amount: "0,1" }, "amount", 'must be a plain number such as 0.5, not "0,1": write a decimal point'],
    [{ amount: "1e3" }, "amount", 'must be a plain number such as 0.5, not "1e3"'],
    [{ amount: "" }, "amount", "must not be empty"],
    [{ amount: "-1" }, "amount", 'must be a plain number such as 0.5, not "-1"'],
    [
      { unit: "mcg" },
      "unit",
      'must be one of g, mg, microgram, nanogram, mmol, unit, mL, puff, J: it is "mcg"',
    ],
    [{ basis: "actual" }, "basis", 'must be one of total, ideal, adjusted, lean: it is "actual"'],
    [{ per: "m2" }, "per", 'cannot be changed here: it is "kg" in the formulary'],
    [{ low: "" }, "low", "must not be empty where high is given"],
    [{ maximum: "" }, "maximum_unit", "must be empty where maximum is"],
    [{ band_low: "3" }, "band_low", "has no meaning for a dose of kind per-kg"],
    [{ option_title: " " }, "option_title", "must not be empty"],
  ])("names row and column of %j", (cells, column, message) => {
    const index = find("lorazepam", "seizure");
    const result = read(index, cells);
    expect(result.ok ? [] : result.error).toEqual([{ row: index + 2, column, message }]);
  });

  it("lists every fault of every row", () => {
    const broken = table.map((row) => ({ ...row, amount: "x" }));
    const result = readDoseTable(draftFormulary, broken);
    expect(result.ok ? 0 : result.error.length).toBe(table.length);
  });

  it("checks the whole afterwards and points to the row", () => {
    const index = find("lorazepam", "seizure");
    const result = read(index, { maximum: "4", maximum_unit: "microgram" });
    expect(result.ok ? [] : result.error).toEqual([
      {
        row: index + 2,
        message:
          "lorazepam, use seizure: maximum 4 micrograms is below the dose for a child of 15 kg, 1.5 mg",
      },
    ]);
  });

  it("refuses rows that are missing, twice there or unknown, and a column that is missing", () => {
    const [first, ...rest] = table;
    if (first === undefined) throw new Error("no row");
    const messages = (rows: readonly Readonly<Record<string, string>>[]): string[] => {
      const result = readDoseTable(draftFormulary, rows);
      return result.ok ? [] : result.error.map(({ message }) => message);
    };
    expect(messages(rest)).toEqual([expect.stringMatching(/^the row .* is missing$/)]);
    expect(messages([...table, first])).toEqual(["is the same dose as row 2"]);
    expect(messages([...table, { ...first, use: "none" }])[0]).toMatch(/^there is no dose/);
    const { amount: _, ...short } = first;
    expect(messages([short, ...rest])).toEqual(["the column is missing"]);
  });

  it("has no cell that its columns do not name", () => {
    for (const row of table) expect(Object.keys(row).sort()).toEqual([...DOSE_TABLE_COLUMNS].sort());
  });
});
