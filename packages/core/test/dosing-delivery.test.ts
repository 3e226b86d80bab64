import { computeSheet, type DoseLine, type Rule, type Strength, usualSyringes } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { describe, expect, it } from "vitest";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;
const never = { citations };

/** A dose of 1 mg per kg, so that the weight in kg is the dose in mg. */
const onePerKg = (extra: object = {}): Rule => ({
  kind: "per-kg",
  amountPerKg: 1,
  unit: "mg",
  basis: "total",
  ...extra,
});

function give(
  kg: number,
  rule: Rule,
  strengths: readonly Strength[],
  extra: Partial<Parameters<typeof oneUseFormulary>[0]> = {},
  cumulative?: (kg: number) => number,
): DoseLine {
  const weights = { totalKg: kilograms(kg), ...(cumulative && { cumulative }) };
  const [line] = computeSheet({ formulary: oneUseFormulary({ rule, strengths, ...extra }), weights });
  if (line === undefined || line.unavailable) throw new Error("no dose");
  return line;
}

const types = ({ warnings }: DoseLine) => warnings.map(({ type }) => type);

describe("the syringe", () => {
  it.each([
    { mg: 0.1, ml: 0.1, syringeMl: 1 },
    { mg: 1, ml: 1, syringeMl: 1 },
    { mg: 1.04, ml: 1, syringeMl: 3 },
    { mg: 2.66, ml: 2.7, syringeMl: 3 },
    { mg: 3.1, ml: 3, syringeMl: 5 },
    { mg: 5.3, ml: 5.5, syringeMl: 10 },
    { mg: 10.4, ml: 10, syringeMl: 20 },
    { mg: 49.6, ml: 50, syringeMl: 50 },
    { mg: 50.4, ml: 50, syringeMl: undefined },
    { mg: 152, ml: 150, syringeMl: undefined },
    { mg: 207, ml: 210, syringeMl: undefined },
  ])("for $mg mL draws $ml mL in the syringe of $syringeMl mL", ({ mg, ml, syringeMl }) => {
    expect(give(mg, onePerKg(), [strengthOf(1, "mg")]).volume).toMatchObject({
      ml,
      ...(syringeMl && { syringeMl }),
    });
  });

  it("keeps within 5 % over its whole range, so that any volume from 0.1 mL can be measured", () => {
    for (const { capacityMl, markMl } of usualSyringes) {
      const smaller =
        usualSyringes.filter((other) => other.capacityMl < capacityMl).at(-1)?.capacityMl ?? 0.1;
      expect((100 * markMl) / 2 / (smaller + markMl / 2)).toBeLessThanOrEqual(5);
    }
  });

  it("goes down to the mark below rather than past the maximum", () => {
    const rule = onePerKg({ maximum: { amount: 2.68, unit: "mg" } });
    const line = give(9, rule, [strengthOf(1, "mg")]);
    expect(line.dose.amount).toBe(2.6);
    expect(line.limitedBy).toBe("single-maximum");
    expect(types(line)).toEqual(["limited", "rounded"]);
  });

  it("goes up to the mark above rather than under the minimum", () => {
    const rule = onePerKg({ minimum: { amount: 2.62, unit: "mg" } });
    expect(give(1, rule, [strengthOf(1, "mg")])).toMatchObject({
      dose: { amount: 2.7 },
      limitedBy: "minimum",
    });
  });
});

describe("a volume too small to measure", () => {
  const neat = strengthOf(10, "mg");
  const weak = strengthOf(1, "mg");

  it("is drawn from a weaker strength at hand", () => {
    const line = give(0.8, onePerKg(), [neat, weak]);
    expect(line).toMatchObject({ dose: { amount: 0.8 }, volume: { ml: 0.8, strength: "1 mg/mL" } });
    expect(types(line)).toContain("weaker-strength");
  });

  it("is diluted where nothing weaker is at hand, by a recipe that gives the dose", () => {
    const line = give(0.8, onePerKg(), [neat]);
    expect(line.volume).toEqual({
      ml: 0.8,
      strength: "1 mg/mL",
      syringeMl: 1,
      dilution: { strength: "10 mg/mL", takeMl: 1, addMl: 9, diluent: "water" },
    });
    expect(line.working.map(({ step }) => step)).toEqual(["per-kg", "volume", "dilution", "volume"]);
    expect(line.working[2]).toMatchObject({ takeMl: 1, addMl: 9, totalMl: 10, ml: 0.08, measurableMl: 0.1 });
    expect(types(line)).toContain("diluted");
  });

  it("is diluted further where tenfold is not enough", () => {
    const line = give(0.06, onePerKg(), [neat]);
    expect(line.volume?.dilution).toMatchObject({ takeMl: 1, addMl: 19 });
    expect(line.dose.amount).toBe(0.06);
  });

  it("stays with the dilution of the first dose for the later ones, as long as one dilution holds them", () => {
    const options = (factor: number) => ({
      options: [
        {
          id: "only",
          title: "only",
          rule: onePerKg(),
          further: [onePerKg({ amountPerKg: factor })],
          citations,
        },
      ],
    });
    const later = (factor: number) =>
      give(0.8, onePerKg(), [neat], { use: options(factor) as never }).further[0];
    expect(later(2)).toMatchObject({ dose: { amount: 1.6 }, volume: { ml: 1.6, strength: "1 mg/mL" } });
    expect(later(2)?.volume?.dilution).toMatchObject({ takeMl: 1, addMl: 9 });
    expect(later(12)).toMatchObject({ dose: { amount: 9.5 }, volume: { ml: 9.5, strength: "1 mg/mL" } });
    expect(later(13)).toMatchObject({ dose: { amount: 10 }, volume: { ml: 1, strength: "10 mg/mL" } });
  });

  it("is measured by the threshold of the medicine where it has one", () => {
    const strength = strengthOf(10, "mg", {
      smallVolumeDilution: { diluent: "water", belowMl: 0.2, citations },
    });
    expect(give(2, onePerKg(), [strength]).volume?.dilution).toBeUndefined();
    expect(give(1.99, onePerKg(), [strength]).volume?.dilution).toBeDefined();
  });

  it("is left without a volume, and said so, where it may not be diluted", () => {
    const line = give(0.8, onePerKg(), [strengthOf(10, "mg", never)]);
    expect(line.volume).toBeUndefined();
    expect(line.dose.amount).toBe(0.8);
    expect(line.warnings).toEqual([{ type: "not-measurable", ml: 0.08 }]);
  });

  it("is taken with more than 5 % of error only where nothing better is at hand, and marked", () => {
    const rule = onePerKg({ maximum: { amount: 1.07, unit: "mg" } });
    const line = give(2, rule, [strengthOf(10, "mg", never)]);
    expect(line.dose.amount).toBe(1);
    expect(line.warnings).toContainEqual({ type: "rounded", errorPercent: -6.5, aboveTolerance: true });
  });
});

describe("an energy", () => {
  const deviceEnergiesJ = [1, 2, 5, 10, 20, 50, 100];
  const joules = (extra: object = {}): Rule => ({
    kind: "per-kg",
    amountPerKg: 4,
    unit: "J",
    basis: "total",
    ...extra,
  });
  const set = (kg: number, rule = joules()) => give(kg, rule, [], { deviceEnergiesJ }).dose.amount;

  it.each([
    [12, 50],
    [5, 20],
    [3.75, 10],
    [3.76, 20],
    [0.1, 1],
    [90, 100],
  ])("for %d kg at 4 J/kg is set to %d J, the lower of two as near", (kg, joulesSet) => {
    expect(set(kg)).toBe(joulesSet);
  });

  it("is never set past the maximum, though the next setting were nearer", () => {
    expect(set(30, joules({ maximum: { amount: 90, unit: "J" } }))).toBe(50);
  });

  it("says so when no setting lies in the accepted range", () => {
    const accepted = { lowPerKg: 3.2, highPerKg: 4.8, citations };
    const line = give(8, joules({ accepted }), [], { deviceEnergiesJ });
    expect(line.dose.amount).toBe(20);
    expect(line.warnings).toContainEqual({
      type: "outside-accepted-range",
      dosePerKg: { amount: 2.5, unit: "J", per: "kg" },
    });
  });
});

describe("robustness", () => {
  const uniform = (low: number, high: number) => (kg: number) =>
    Math.min(1, Math.max(0, (kg - low) / (high - low)));
  const accepted = { lowPerKg: 0.8, highPerKg: 1.2, citations };
  const strengths = [strengthOf(1, "mg")];
  const outside = (line: DoseLine) => line.robustness?.probabilityOutside;

  it("is the probability of a weight that the dose does not serve", () => {
    // 10 mg serve 10 / 1.2 = 8.33 to 10 / 0.8 = 12.5 kg; of 8 to 13 kg, evenly spread, 0.33 and 0.5 kg are left out.
    const line = give(10, onePerKg({ accepted }), strengths, {}, uniform(8, 13));
    expect(outside(line)).toBeCloseTo((1 / 3 + 0.5) / 5, 12);
    expect(types(line)).toContain("not-robust");
  });

  it("does not call a dose at the maximum too small, nor one at the minimum too large", () => {
    const maximum = { amount: 10, unit: "mg" };
    expect(outside(give(10, onePerKg({ accepted, maximum }), strengths, {}, uniform(9, 30)))).toBe(0);
    const minimum = { amount: 10, unit: "mg" };
    expect(outside(give(10, onePerKg({ accepted, minimum }), strengths, {}, uniform(2, 11)))).toBe(0);
  });

  it("is left out with its reason", () => {
    expect(give(10, onePerKg({ accepted }), strengths).robustnessOmitted).toBe("weight-measured");
    expect(give(10, onePerKg(), strengths, {}, uniform(8, 13)).robustnessOmitted).toBe("no-accepted-range");
  });

  it("throws on a distribution that is none", () => {
    expect(() => give(10, onePerKg({ accepted }), strengths, {}, () => Number.NaN)).toThrow("cumulative");
  });
});

describe("an infusion", () => {
  const rule: Rule = {
    kind: "infusion",
    unit: "microgram",
    per: "min",
    basis: "total",
    startPerKg: 0.1,
    lowPerKg: 0.05,
    highPerKg: 1,
  };
  const made = { unit: "mg", totalMl: 50, diluent: "water", citations } as const;
  const use = {
    preparations: [
      { kind: "per-kg", id: "own", amountPerKg: 0.3, ...made },
      { kind: "fixed", id: "small", amount: 1, lowKg: 0, highKg: 10, ...made },
      { kind: "fixed", id: "large", amount: 3, lowKg: 10, ...made },
    ],
  } as const;
  const run = (kg: number) => give(kg, rule, [], { use });

  it("takes the fixed concentration of its band first, the child's own syringe second", () => {
    expect(run(9.99).preparations?.map(({ id }) => id)).toEqual(["small", "own"]);
    expect(run(10).preparations?.map(({ id }) => id)).toEqual(["large", "own"]);
    expect(run(10).rate).toEqual({ mlPerH: 1, concentration: "60 micrograms/mL" });
  });

  it.each([2.5, 9, 20, 28.1, 70])(
    "of 0.3 mg/kg in 50 mL gives 0.1 micrograms/kg/min at 1 mL/h for %d kg",
    (kg) => {
      const own = run(kg).preparations?.find(({ id }) => id === "own");
      expect(own).toMatchObject({
        mlPerH: 1,
        dosePerMlPerH: { amount: 0.1, unit: "microgram", per: "kg/min" },
        lastsH: 50,
      });
      expect(own?.lowMlPerH).toBe(0.5);
      expect(own?.highMlPerH).toBe(10);
    },
  );

  it("is set in steps of the pump and never past the highest dose", () => {
    const [first] = run(28.1).preparations ?? [];
    expect(first).toMatchObject({ mlPerH: 2.8, highMlPerH: 28.1 });
    // 28.17 kg at 1 microgram/kg/min are 28.17 mL/h: 28.2 would pass the highest dose.
    expect(run(28.17).preparations?.[0]?.highMlPerH).toBe(28.1);
    expect(run(3.33).preparations?.[0]?.mlPerH).toBe(1);
    expect(run(3).preparations?.[0]).toMatchObject({ mlPerH: 0.9, lowMlPerH: 0.45 });
  });
});
