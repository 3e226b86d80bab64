import { describe, expect, test } from "vitest";
import type { FormularyIndex } from "../../state/index-formulary.ts";
import { type Found, searchUses } from "./search-uses.ts";

const index: FormularyIndex = {
  version: "1",
  signed: false,
  problems: [
    {
      problem: "arrest",
      uses: [
        { id: "a.arrest", medicine: "Adrenaline", use: "cardiac arrest" },
        { id: "b.arrest", medicine: "Amiodarone", use: "shockable rhythm" },
      ],
    },
    { problem: "pain", uses: [{ id: "k.pain", medicine: "KETamine", use: "procédure" }] },
    {
      problem: "fluids",
      uses: Array.from({ length: 50 }, (_, i) => ({ id: `f.${i}`, medicine: "Fluid", use: `number ${i}` })),
    },
  ],
};
const ids = (search: string): readonly string[] | undefined =>
  searchUses(index, search)?.problems.flatMap(({ uses }) => uses.map(({ id }) => id));

describe("searchUses()", () => {
  test("nothing asked is no search", () => {
    expect(searchUses(index, "")).toBeUndefined();
    expect(searchUses(index, "  ")).toBeUndefined();
  });

  test("finds every word in medicine, use or problem, whatever case and accents", () => {
    expect(ids("adr")).toEqual(["a.arrest"]);
    expect(ids("ketamine")).toEqual(["k.pain"]);
    expect(ids("PROCEDURE")).toEqual(["k.pain"]);
    expect(ids("arrest shock")).toEqual(["b.arrest"]);
    expect(ids("sedation")).toEqual(["k.pain"]);
    expect(ids("adrenaline pain")).toEqual([]);
  });

  test("shows the first thirty and counts all", () => {
    const { count, shown, problems } = searchUses(index, "fluid") as Found;
    expect([count, shown, problems.flatMap(({ uses }) => uses).length]).toEqual([50, 30, 30]);
  });
});
