import { computeSheet, type DoseLine, type SimpleRule, type Strength } from "@steelyard/core/dosing";
import { FRENCH_NUMBERS, kilograms, writeLabel } from "@steelyard/core/units";
import { describeDosingWarning, describeWorking, FRENCH_LANGUAGE } from "@steelyard/core/wording";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { oneUseFormulary } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "memory" }] as const;
const inhaler = (amountPerPuff: number): Strength => ({
  id: `inhaler-${amountPerPuff}`,
  amountPerPuff,
  unit: "microgram",
  container: "pressurised inhaler",
  containerPuffs: 200,
  citations,
});

function lineOf(rule: SimpleRule, strengths: readonly Strength[], kg = 20): DoseLine {
  const formulary = oneUseFormulary({ rule, strengths, medicine: { name: "inventedol" } });
  const [line] = computeSheet({ formulary, weights: { totalKg: kilograms(kg) } });
  if (line === undefined || line.unavailable) throw new Error("the line must have a dose");
  return line;
}

const perKg = (amountPerKg: number, limits: Partial<SimpleRule> = {}): SimpleRule =>
  ({ kind: "per-kg", amountPerKg, unit: "microgram", basis: "total", ...limits }) as SimpleRule;
const spaced = (text: string): string => text.replaceAll("\u00a0", " ");
const working = (line: DoseLine): string[] => line.working.map((step) => spaced(describeWorking(step)));

describe("puffs of an inhaler", () => {
  it("are counted as the rule counts them, beside the mass that they hold", () => {
    const line = lineOf({ kind: "fixed", amount: 10, unit: "puff" }, [inhaler(100)]);
    expect(line.dose).toEqual({ amount: 10, unit: "puff" });
    expect(line.puffs).toEqual({ puffs: 10, strength: "100 micrograms/puff", containerPuffs: 200 });
    expect(line.equivalents).toEqual([{ dose: { amount: 1000, unit: "microgram" }, of: "inventedol" }]);
    expect(line.volume).toBeUndefined();
    expect(working(line).at(-1)).toBe("10 puffs × 100 micrograms/puff = 1 mg.");
  });

  it("come from a dose in mass, in whole puffs, with what the rounding did", () => {
    const line = lineOf(perKg(32), [inhaler(100)]);
    expect(line.puffs?.puffs).toBe(6);
    expect(line.dose).toEqual({ amount: 600, unit: "microgram" });
    expect(line.equivalents).toBeUndefined();
    expect(line.warnings).toContainEqual({ type: "rounded", errorPercent: -6.3, aboveTolerance: true });
    expect(working(line).at(-1)).toBe(
      "640 micrograms ÷ 100 micrograms/puff = 6.4 puffs, given as 6 puffs (6.3 % less); 6 puffs × 100 micrograms/puff = 600 micrograms.",
    );
  });

  it("come from the inhaler that gives them within 5 %", () => {
    const line = lineOf(perKg(32), [inhaler(100), inhaler(20)]);
    expect(line.puffs).toMatchObject({ puffs: 32, strength: "20 micrograms/puff" });
  });

  it("never pass the maximum, and a puff is never divided", () => {
    const limits = { maximum: { amount: 0.36, unit: "mg" } } as const;
    expect(lineOf(perKg(18, limits), [inhaler(100)]).puffs?.puffs).toBe(3);
    const tooSmall = lineOf(perKg(2), [inhaler(100)]);
    expect(tooSmall.puffs).toBeUndefined();
    expect(tooSmall.dose).toEqual({ amount: 40, unit: "microgram" });
    const [warning] = tooSmall.warnings;
    if (warning === undefined) throw new Error("a warning must be there");
    expect(spaced(describeDosingWarning(warning))).toContain("0.4 puffs of 100 micrograms/puff");
    expect(describeDosingWarning(warning, FRENCH_LANGUAGE.dosing)).toContain("bouffée");
  });

  it("are exact for any mass, and nearest where no maximum is in the way", () => {
    const facts = fc.record({
      each: fc.integer({ min: 1, max: 500 }),
      amountPerKg: fc.integer({ min: 1, max: 400 }),
      kg: fc.integer({ min: 3, max: 90 }),
    });
    fc.assert(
      fc.property(facts, ({ each, amountPerKg, kg }) => {
        const line = lineOf(perKg(amountPerKg), [inhaler(each)], kg);
        const asked = amountPerKg * kg;
        const puffs = line.puffs?.puffs ?? 0;
        expect(Number.isInteger(puffs)).toBe(true);
        expect(Math.abs(puffs * each - asked)).toBeLessThanOrEqual(each / 2);
        if (puffs > 0) expect(line.dose.amount).toBe(puffs * each);
        else expect(asked).toBeLessThanOrEqual(each / 2);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it("are labelled in the reader's language", () => {
    expect(spaced(writeLabel("100 micrograms/puff", FRENCH_NUMBERS))).toBe("100 microgrammes/bouffée");
  });
});
