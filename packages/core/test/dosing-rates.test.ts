import {
  burnFluidMl,
  computeSheet,
  type DoseLine,
  fluidDeficitMl,
  type InfusionRule,
  maintenanceFluidMl,
  type Rule,
} from "@steelyard/core/dosing";
import { kilograms, months } from "@steelyard/core/units";
import { describeDosingWarning, describeWorking } from "@steelyard/core/wording";
import { describe, expect, it } from "vitest";
import published from "./published/fluids.json" with { type: "json" };
import { oneUseFormulary } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;

function run(kg: number, rule: Rule, extra: Partial<Parameters<typeof oneUseFormulary>[0]> = {}): DoseLine {
  const weights = { totalKg: kilograms(kg) };
  const [line] = computeSheet({ formulary: oneUseFormulary({ rule, ...extra }), weights });
  if (line === undefined || line.unavailable) throw new Error("no dose");
  return line;
}

const say = (line: DoseLine): string[] =>
  [
    ...line.working.map((step) => describeWorking(step)),
    ...line.warnings.map((w) => describeDosingWarning(w)),
  ].map((sentence) => sentence.replaceAll("\u00a0", " "));

describe("fluids against published figures", () => {
  it.each(published)("$id: $given $at ($source)", ({ given, expected, tolerance }) => {
    const { kg } = given;
    const actual =
      given.per !== undefined
        ? maintenanceFluidMl({
            kg,
            per: given.per === "h" ? "h" : "day",
            ...(given.maximumMl !== undefined && { maximumMl: given.maximumMl }),
          })
        : burnFluidMl({
            kg,
            burnedPercent: given.burnedPercent ?? Number.NaN,
            mlPerKgPerPercent: given.mlPerKgPerPercent ?? Number.NaN,
          })[expected.part === "first8h" ? "first8hMl" : "first24hMl"];
    expect(Math.abs(actual - expected.ml)).toBeLessThanOrEqual(tolerance ?? 0);
  });

  it("refuse what no child has", () => {
    expect(() => maintenanceFluidMl({ kg: 0, per: "h" })).toThrow(RangeError);
    expect(() => maintenanceFluidMl({ kg: Number.NaN, per: "day" })).toThrow(RangeError);
    expect(() => fluidDeficitMl({ kg: 10, lostPercent: 30 })).toThrow(RangeError);
    expect(() => fluidDeficitMl({ kg: -1, lostPercent: 5 })).toThrow(RangeError);
    expect(() => burnFluidMl({ kg: 10, burnedPercent: 101, mlPerKgPerPercent: 3 })).toThrow(RangeError);
    expect(() => burnFluidMl({ kg: 10, burnedPercent: 10, mlPerKgPerPercent: 30 })).toThrow(RangeError);
  });
});

const maintenance: Rule = {
  kind: "tiered-rate",
  unit: "mL",
  per: "h",
  basis: "total",
  tiers: [{ upToKg: 10, perKg: 4 }, { upToKg: 20, perKg: 2 }, { perKg: 1 }],
  maximum: { amount: 100, unit: "mL" },
};

describe("a fluid by tiers of weight", () => {
  it.each([
    [4, 16],
    [10, 40],
    [10.1, 40.2],
    [20, 60],
    [21.5, 61.5],
    [60, 100],
    [90, 100],
  ])("runs for %s kg at %s mL/h", (kg, mlPerH) => {
    const line = run(kg, maintenance);
    expect(line.dose).toEqual({ amount: mlPerH, unit: "mL", per: "h" });
    expect(line.rate).toEqual({ mlPerH, concentration: "test" });
  });

  it("shows each tier, and the ceiling", () => {
    const sentences = say(run(75, maintenance));
    expect(sentences).toContain(
      "4 mL/kg/h × 10 kg + 2 mL/kg/h × 10 kg + 1 mL/kg/h × 55 kg (total weight) = 115 mL/h.",
    );
    expect(sentences).toContain("Held at the single maximum of 100 mL/h; by weight it would be 115 mL/h.");
  });
});

describe("a fluid by mL/kg/h", () => {
  const glucose: Rule = {
    kind: "infusion",
    unit: "mL",
    per: "h",
    basis: "total",
    startPerKg: 5,
    lowPerKg: 5,
    highPerKg: 10,
  };

  it("needs no preparation", () => {
    const line = run(12.34, glucose);
    expect(line.rate).toEqual({ mlPerH: 61.7, concentration: "test" });
    expect(line.preparations).toBeUndefined();
    expect(say(line)).toContain("5 mL/kg/h × 12.34 kg total = 61.7 mL/h.");
  });

  it("sets the pump and says so", () => {
    const line = run(12.35, glucose);
    // 61.75 mL/h lies between two steps; the lower is taken.
    expect(line.rate?.mlPerH).toBe(61.7);
    expect(say(line)).toContain("61.75 mL/h is set as 61.7 mL/h (0.1 % less).");
  });
});

describe("the fluid of a burn", () => {
  const rule: Rule = {
    kind: "per-kg",
    amountPerKg: 3,
    unit: "mL",
    basis: "total",
    perBurnPercent: { fromPercent: 10 },
    accepted: { lowPerKg: 2, highPerKg: 4, citations },
  };
  const administration = {
    text: "half in 8 hours",
    portions: [
      { share: 0.5, overH: 8 },
      { share: 0.5, overH: 16 },
    ],
    citations,
  };
  const formulary = oneUseFormulary({ rule, use: { administration } });
  const line = (burnPercent?: number) => {
    const weights = { totalKg: kilograms(18), cumulative: (kg: number) => (kg < 18 ? 0 : 1) };
    const [computed] = computeSheet({ formulary, weights, burnPercent });
    if (computed === undefined) throw new Error("no line");
    return computed;
  };
  const given = (burnPercent: number): DoseLine => {
    const computed = line(burnPercent);
    if (computed.unavailable) throw new Error("no dose");
    return computed;
  };

  it("goes by weight and percent, in parts that a pump can be set to", () => {
    const computed = given(20);
    expect(computed.dose).toEqual({ amount: 1080, unit: "mL" });
    expect(computed.portions).toEqual([
      { ml: 540, overH: 8, mlPerH: 67.5 },
      { ml: 540, overH: 16, mlPerH: 33.7 },
    ]);
    expect(say(computed)).toEqual([
      "3 mL/kg × 18 kg total × 20 % burnt = 1,080 mL.",
      "50 % of 1,080 mL = 540 mL, over 8 h: 67.5 mL/h.",
      "50 % of 1,080 mL = 540 mL, over 16 h: 33.7 mL/h.",
    ]);
    expect(burnFluidMl({ kg: 18, burnedPercent: 20, mlPerKgPerPercent: 3 })).toEqual({
      first24hMl: 1080,
      first8hMl: 540,
    });
  });

  it("judges the doubt of the weight against the range for this burn", () => {
    expect(given(20).robustness).toMatchObject({ acceptedLowPerKg: 40, acceptedHighPerKg: 80 });
  });

  it("says that a small burn is none of it", () => {
    expect(say(given(9.5))).toContain(
      "9.5 % burnt is less than the 10 % that this fluid is reckoned from: drinking may be enough.",
    );
    expect(given(10).warnings).toEqual([]);
  });

  it("is not reckoned where the percent is not known, and refuses what no burn is", () => {
    expect(line().unavailable).toEqual({
      type: "burn-percent-missing",
      perPercent: { amount: 54, unit: "mL" },
    });
    for (const wrong of [0, -5, 100.1, Number.NaN])
      expect(() => line(wrong)).toThrow(/burnPercent must be in \(0, 100\]/);
  });
});

describe("an infusion by age", () => {
  const at = (startPerKg: number): InfusionRule => ({
    kind: "infusion",
    unit: "mg",
    per: "h",
    basis: "total",
    startPerKg,
    lowPerKg: 0.5,
    highPerKg: 1,
  });
  const rule: Rule = {
    kind: "infusion-age-bands",
    bands: [
      { lowMonths: 12, highMonths: 108, rule: at(1) },
      { lowMonths: 108, rule: at(0.7) },
    ],
  };
  const syringe = { kind: "per-kg", unit: "mg", totalMl: 50, diluent: "saline", citations } as const;
  const preparations = [
    { ...syringe, kind: "fixed", id: "fixed", amount: 50, lowKg: 20 },
    { ...syringe, id: "own", amountPerKg: 5, highKg: 15 },
  ] as const;
  const line = (kg: number, ageMonths?: number, own: Rule = rule) => {
    const [computed] = computeSheet({
      formulary: oneUseFormulary({ rule: own, use: { preparations } }),
      weights: { totalKg: kilograms(kg) },
      ...(ageMonths !== undefined && { ageMonths: months(ageMonths) }),
    });
    if (computed === undefined) throw new Error("no line");
    return computed;
  };
  const given = (...facts: Parameters<typeof line>): DoseLine => {
    const computed = line(...facts);
    if (computed.unavailable) throw new Error("no dose");
    return computed;
  };

  it.each([
    [12, 1],
    [107.9, 1],
    [108, 0.7],
  ])("at %d months starts at %d mg/kg/h: a band holds its lower edge alone", (ageMonths, amount) => {
    const computed = given(30, ageMonths);
    expect(computed.dose).toEqual({ amount, unit: "mg", per: "kg/h" });
    expect(computed.rate?.mlPerH).toBe(30 * amount);
    expect(computed.working[0]).toMatchObject({ step: "band", by: "age", value: ageMonths });
  });

  it("refuses an age under its bands, and shows every start where the age is not known", () => {
    expect(line(8, 6).unavailable).toMatchObject({ type: "outside-bands", by: "age", low: 12 });
    expect(line(30).unavailable).toEqual({
      type: "age-missing",
      choices: [
        { lowMonths: 12, highMonths: 108, dose: { amount: 1, unit: "mg", per: "kg/h" } },
        { lowMonths: 108, dose: { amount: 0.7, unit: "mg", per: "kg/h" } },
      ],
    });
  });

  it("runs what the formulary gives for an unknown age, and says so", () => {
    const computed = given(30, undefined, { ...rule, whenAgeUnknown: at(0.7) });
    expect(computed.dose.amount).toBe(0.7);
    expect(computed.warnings).toContainEqual({ type: "age-needed", for: "band" });
  });

  it("leaves out the syringe that is not made up for this weight, with a word", () => {
    const heavy = given(30, 60);
    expect(heavy.preparations?.map(({ id }) => id)).toEqual(["fixed"]);
    expect(say(heavy)).toContain(
      "A syringe of 5 mg/kg in 50 mL is made up for under 15 kg and not for 30 kg, so it is left out.",
    );
    expect(given(12, 60).preparations?.map(({ id }) => id)).toEqual(["own"]);
    expect(say(given(12, 60)).join(" ")).not.toContain("left out");
  });

  it("has a dose and no rate where nothing is made up for this weight, and says so", () => {
    const between = given(17, 60);
    expect(between.rate).toBeUndefined();
    expect(between.warnings).toContainEqual({ type: "no-preparation", kg: 17 });
  });
});

describe("an infusion with a maximum for the hour", () => {
  const potassium: Rule = {
    kind: "infusion",
    unit: "mmol",
    per: "h",
    basis: "total",
    startPerKg: 0.4,
    lowPerKg: 0.2,
    highPerKg: 0.5,
    maximum: { amount: 20, unit: "mmol" },
  };
  const use = {
    preparations: [
      {
        kind: "fixed",
        id: "bag",
        amount: 20,
        unit: "mmol",
        totalMl: 500,
        diluent: "saline",
        lowKg: 0,
        citations,
      },
    ],
  } as const;

  it("holds start and range at it", () => {
    const line = run(80, potassium, { use });
    expect(line.dose).toEqual({ amount: 0.25, unit: "mmol", per: "kg/h" });
    expect(line.preparations?.[0]).toMatchObject({ mlPerH: 500, lowMlPerH: 400, highMlPerH: 500 });
    expect(line.limitedBy).toBe("single-maximum");
    expect(say(line)).toContain("Held at the single maximum of 20 mmol/h; by weight it would be 32 mmol/h.");
  });

  it("holds the low end of the range at it too", () => {
    const line = run(120, potassium, { use });
    // 0.2 mmol/kg/h would be 24 mmol/h, 600 mL/h.
    expect(line.preparations?.[0]).toMatchObject({ mlPerH: 500, lowMlPerH: 500, highMlPerH: 500 });
  });

  it("makes up a syringe by weight only for the weights it is meant for", () => {
    const perKg = {
      kind: "per-kg",
      id: "own",
      amountPerKg: 1,
      unit: "mmol",
      totalMl: 50,
      diluent: "saline",
      citations,
    } as const;
    const ids = (kg: number, range: { readonly lowKg?: number; readonly highKg?: number }) =>
      run(kg, potassium, {
        use: { preparations: [{ ...perKg, ...range }, ...use.preparations] },
      }).preparations?.map(({ id }) => id);
    expect(ids(40, {})).toEqual(["bag", "own"]);
    expect(ids(9.9, { lowKg: 10, highKg: 20 })).toEqual(["bag"]);
    expect(ids(10, { lowKg: 10, highKg: 20 })).toEqual(["bag", "own"]);
    expect(ids(20, { lowKg: 10, highKg: 20 })).toEqual(["bag"]);
    expect(ids(19.9, { highKg: 20 })).toEqual(["bag", "own"]);
  });

  it("says what the first hour brings beside the maintenance of one hour", () => {
    const line = run(10, potassium, { use });
    // 4 mmol/h of 0.04 mmol/mL are 100 mL/h; 10 kg need 40 mL/h.
    expect(line.preparations?.[0]?.firstHour).toEqual({ ml: 100, allowanceMl: 40, sharePercent: 250 });
    expect(line.warnings).toContainEqual({ type: "fluid-load", ml: 100, allowanceMl: 40 });
    expect(say(line)).toContain(
      "The first hour brings 100 mL, 250 % of the 40 mL of maintenance for one hour.",
    );
  });
});
