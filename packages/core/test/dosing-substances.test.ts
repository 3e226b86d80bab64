import { computeSheet, type DoseLine, type Rule, type Strength } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { describeDosingWarning, describeWorking } from "@steelyard/core/wording";
import { describe, expect, it } from "vitest";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;

function give(
  kg: number,
  rule: Rule,
  strengths: readonly Strength[],
  extra: Partial<Parameters<typeof oneUseFormulary>[0]> = {},
): DoseLine {
  const weights = { totalKg: kilograms(kg) };
  const [line] = computeSheet({ formulary: oneUseFormulary({ rule, strengths, ...extra }), weights });
  if (line === undefined || line.unavailable) throw new Error("no dose");
  return line;
}

/** Calcium gluconate 10 %: 100 mg of the salt in each mL, which the label also states as 0.22 mmol of calcium. */
const gluconate = strengthOf(100, "mg", {
  expressedAs: "calcium gluconate",
  equivalents: [{ expressedAs: "calcium", amountPerMl: 0.22, unit: "mmol", citations }],
});
const salt: Rule = {
  kind: "per-kg",
  amountPerKg: 50,
  unit: "mg",
  basis: "total",
  expressedAs: "calcium gluconate",
  maximum: { amount: 2000, unit: "mg" },
};
const element: Rule = {
  kind: "per-kg",
  amountPerKg: 0.11,
  unit: "mmol",
  basis: "total",
  expressedAs: "calcium",
  maximum: { amount: 4.4, unit: "mmol" },
};

describe("a salt and its element", () => {
  // 10 % calcium gluconate, 0.5 mL/kg at 30 and 50 kg: 15 mL = 3.3 mmol, 20 mL at most (check value CV075).
  it.each([
    [30, 15, 1500, 3.3],
    [50, 20, 2000, 4.4],
  ])("give the same volume at %s kg, each with the other beside it", (kg, ml, mg, mmol) => {
    const bySalt = give(kg, salt, [gluconate]);
    const byElement = give(kg, element, [gluconate]);
    expect(bySalt).toMatchObject({
      dose: { amount: mg, unit: "mg" },
      of: "calcium gluconate",
      volume: { ml },
    });
    expect(bySalt.equivalents).toEqual([{ dose: { amount: mmol, unit: "mmol" }, of: "calcium" }]);
    expect(byElement).toMatchObject({ dose: { amount: mmol, unit: "mmol" }, of: "calcium", volume: { ml } });
    expect(byElement.equivalents).toEqual([{ dose: { amount: mg, unit: "mg" }, of: "calcium gluconate" }]);
  });

  it("is said in the working", () => {
    const sentences = give(30, salt, [gluconate]).working.map((step) =>
      describeWorking(step).replaceAll("\u00a0", " "),
    );
    expect(sentences).toContain("By the label, 15 mL × 0.22 mmol/mL = 3.3 mmol of calcium.");
  });

  it("are never converted where the label does not state it", () => {
    expect(() => give(30, element, [strengthOf(100, "mg")])).toThrow(/must state its content of calcium/);
    expect(() => give(30, salt, [strengthOf(100, "mg")])).toThrow(RangeError);
    expect(() => give(30, { kind: "fixed", amount: 1, unit: "mg" }, [gluconate])).toThrow(RangeError);
  });

  it("count what a dilution holds", () => {
    const strong: Strength = { ...gluconate, smallVolumeDilution: { diluent: "glucose 5 %", citations } };
    const line = give(0.1, { ...salt, amountPerKg: 50 }, [strong]);
    expect(line.volume).toMatchObject({ ml: 0.5, dilution: { takeMl: 1, addMl: 9 } });
    expect(line.equivalents).toEqual([{ dose: { amount: 0.011, unit: "mmol" }, of: "calcium" }]);
  });
});

describe("a rule of rounding", () => {
  const artesunate: Rule = { kind: "per-kg", amountPerKg: 3, unit: "mg", basis: "total" };
  const up = { use: { rounding: { toMl: 1, direction: "up", citations } } } as const;

  // Artesunate, 3 mg/kg, volumes rounded up to whole mL (check values CV061 to CV063).
  it.each([
    [8, 10, 3],
    [8, 20, 2],
    [6, 10, 2],
    [6, 20, 1],
    [10, 10, 3],
  ])("takes %s kg of a strength of %s mg/mL to %s mL", (kg, perMl, ml) => {
    const line = give(kg, artesunate, [strengthOf(perMl, "mg")], up);
    expect(line.volume?.ml).toBe(ml);
    expect(line.dose.amount).toBe(ml * perMl);
  });

  it("says by how much the dose is more than the exact one", () => {
    const line = give(8, artesunate, [strengthOf(10, "mg")], up);
    expect(line.warnings.map((warning) => describeDosingWarning(warning).replaceAll("\u00a0", " "))).toEqual([
      "Rounded as the source of the dose says: 25 % more than the exact dose.",
    ]);
  });

  it("still does not pass a maximum", () => {
    const rule = { ...artesunate, maximum: { amount: 28, unit: "mg" } } as const;
    expect(give(8, rule, [strengthOf(10, "mg")], up).volume?.ml).toBe(2);
  });

  it("never rounds a dose down to nothing", () => {
    const down = { use: { rounding: { toMl: 1, direction: "down", citations } } } as const;
    expect(give(2, artesunate, [strengthOf(10, "mg")], down).volume?.ml).toBe(1);
  });
});

describe("how fast and how concentrated", () => {
  const phenytoin: Rule = { kind: "per-kg", amountPerKg: 20, unit: "mg", basis: "total" };
  const administration = {
    text: "slowly",
    maximumRate: { amount: { amount: 1, unit: "mg" }, perKg: true, per: "min" },
    maximumConcentrationPerMl: { amount: 10, unit: "mg" },
    citations,
  } as const;

  it("is worked out for this dose", () => {
    const line = give(15, phenytoin, [strengthOf(50, "mg")], { use: { administration } });
    expect(line.volume?.ml).toBe(6);
    expect(line.giving).toEqual({ shortestMin: 20, leastMl: 30 });
    expect(line.warnings).toContainEqual({ type: "too-concentrated", ml: 6, leastMl: 30 });
    const sentences = line.working.map((step) => describeWorking(step).replaceAll("\u00a0", " "));
    expect(sentences).toContain("300 mg ÷ (1 mg/kg/min × 15 kg): over 20 min or longer.");
    expect(sentences).toContain("300 mg ÷ 10 mg/mL: given in 30 mL or more.");
  });

  it("counts a flat rate by the hour, and rounds up", () => {
    const flat = {
      ...administration,
      maximumRate: { amount: { amount: 0.7, unit: "g" }, perKg: false, per: "h" },
    } as const;
    const line = give(15, phenytoin, [strengthOf(50, "mg")], { use: { administration: flat } });
    // 300 mg at 700 mg/h take 25.71 min.
    expect(line.giving?.shortestMin).toBe(26);
  });

  it("follows the stricter of the rate per kg and the flat one", () => {
    const both = {
      ...administration,
      maximumRate: { ...administration.maximumRate, maximum: { amount: 0.05, unit: "g" } },
    } as const;
    const shortest = (kg: number) =>
      give(kg, phenytoin, [strengthOf(50, "mg")], { use: { administration: both } });
    expect(shortest(40).giving?.shortestMin).toBe(20);
    expect(shortest(50).giving?.shortestMin).toBe(20);
    // 1,600 mg at 50 mg/min; 80 mg/min by weight would be 20 minutes.
    const heavy = shortest(80);
    expect(heavy.giving?.shortestMin).toBe(32);
    const sentences = heavy.working.map((step) => describeWorking(step).replaceAll("\u00a0", " "));
    expect(sentences).toContain("1,600 mg ÷ 0.05 g/min: over 32 min or longer.");
  });

  it("is content where the dose is added to enough fluid", () => {
    const added = {
      ...administration,
      dilution: { diluent: "saline", volume: { kind: "fixed", amount: 30, unit: "mL" }, citations },
    } as const;
    const line = give(15, phenytoin, [strengthOf(50, "mg")], { use: { administration: added } });
    expect(line.warnings.map(({ type }) => type)).not.toContain("too-concentrated");
  });
});
