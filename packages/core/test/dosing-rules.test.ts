import { computeSheet, type DoseLine, type Rule, type SheetLine, type Weights } from "@steelyard/core/dosing";
import { centimetres, kilograms, months } from "@steelyard/core/units";
import { describe, expect, it } from "vitest";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;
const mgPerKg = (amountPerKg: number, extra: object = {}) =>
  ({ kind: "per-kg", amountPerKg, unit: "mg", basis: "total", ...extra }) as const;
const fixedMg = (amount: number) => ({ kind: "fixed", amount, unit: "mg" }) as const;
const weights = (totalKg: number, idealKg?: number): Weights => ({
  totalKg: kilograms(totalKg),
  ...(idealKg !== undefined && { idealKg: kilograms(idealKg) }),
});

function line(
  rule: Rule,
  child: Omit<Parameters<typeof computeSheet>[0], "formulary">,
  extra: Partial<Parameters<typeof oneUseFormulary>[0]> = {},
): SheetLine {
  const strengths = [strengthOf(1, "mg")];
  const [only] = computeSheet({ ...child, formulary: oneUseFormulary({ rule, strengths, ...extra }) });
  if (only === undefined) throw new Error("a use has lost its line");
  return only;
}

function dosed(...args: Parameters<typeof line>): DoseLine {
  const found = line(...args);
  if (found.unavailable) throw new Error(`no dose: ${found.unavailable.type}`);
  return found;
}

const types = ({ warnings }: SheetLine) => warnings.map(({ type }) => type);

describe("the basis", () => {
  it("is the one the rule asks for when the child is heavier than ideal", () => {
    expect(dosed(mgPerKg(1, { basis: "ideal" }), { weights: weights(30, 25) })).toMatchObject({
      basis: "ideal",
      basisKg: 25,
      dose: { amount: 25, unit: "mg" },
      robustnessOmitted: "basis-not-total",
    });
  });

  it("is total weight for a child lighter than ideal, with a warning", () => {
    const found = dosed(mgPerKg(1, { basis: "ideal" }), { weights: weights(20, 25) });
    expect(found).toMatchObject({ basis: "total", basisKg: 20, dose: { amount: 20 } });
    expect(types(found)).toContain("basis-swapped");
    expect(found.working[0]).toMatchObject({ step: "basis-swapped", from: "ideal", fromKg: 25, toKg: 20 });
  });

  it("counts the excess over ideal with the share of the rule", () => {
    const rule = mgPerKg(20, { basis: "adjusted", shareOfExcess: 1.33, maximum: { amount: 2, unit: "g" } });
    // 40 kg + 1.33 x 20 kg = 66.6 kg, 1,332 mg; 1,332 mL are measured to 10 mL.
    const found = dosed(rule, { weights: { ...weights(60, 40), adjustedKg: kilograms(48) } });
    expect(found).toMatchObject({ basis: "adjusted", basisKg: 66.6, dose: { amount: 1330 } });
    expect(found.working[0]).toEqual({
      step: "adjusted-weight",
      idealKg: 40,
      share: 1.33,
      totalKg: 60,
      kg: 66.6,
    });
    // 50 kg + 1.33 x 50 kg = 116.5 kg would be 2,330 mg.
    expect(dosed(rule, { weights: weights(100, 50) }).dose).toEqual({ amount: 2000, unit: "mg" });
    expect(dosed(rule, { weights: weights(40, 40) }).basisKg).toBe(40);
    expect(dosed(rule, { weights: weights(20, 25) })).toMatchObject({ basis: "total", basisKg: 20 });
    expect(line(rule, { weights: { ...weights(60), adjustedKg: kilograms(48) } }).unavailable).toEqual({
      type: "weight-missing",
      basis: "ideal",
    });
  });

  it("is never replaced when it is not known", () => {
    expect(line(mgPerKg(1, { basis: "ideal" }), { weights: weights(20) }).unavailable).toEqual({
      type: "weight-missing",
      basis: "ideal",
    });
  });

  it.each([
    { total: 24, ideal: 20, differs: false },
    { total: 24.1, ideal: 20, differs: true },
    { total: 20, ideal: 24, differs: false },
    { total: 20, ideal: 24.1, differs: true },
  ])("total $total, ideal $ideal: a difference over 20 % is $differs", ({ total, ideal, differs }) => {
    expect(types(dosed(mgPerKg(1), { weights: weights(total, ideal) })).includes("bases-differ")).toBe(
      differs,
    );
  });

  it("does not warn of a difference that the maximum takes away", () => {
    const rule = mgPerKg(1, { maximum: { amount: 15, unit: "mg" } });
    expect(types(dosed(rule, { weights: weights(40, 20) }))).not.toContain("bases-differ");
  });
});

describe("bands", () => {
  const byAge: Rule = {
    kind: "age-bands",
    bands: [
      { lowMonths: 3, highMonths: 12, rule: fixedMg(2) },
      { lowMonths: 12, rule: fixedMg(5) },
    ],
  };
  const byWeight: Rule = {
    kind: "weight-bands",
    basis: "total",
    bands: [
      { lowKg: 3, highKg: 20, rule: mgPerKg(3) },
      { lowKg: 20, highKg: 50, rule: mgPerKg(2.4) },
    ],
  };

  it.each([
    [3, 2],
    [11.999_999, 2],
    [12, 5],
    [200, 5],
  ])("of age: %d months gets %d mg", (age, amount) => {
    expect(dosed(byAge, { weights: weights(10), ageMonths: months(age) }).dose.amount).toBe(amount);
  });

  it("of age leave out who is younger than the first", () => {
    expect(line(byAge, { weights: weights(5), ageMonths: months(2.999) }).unavailable).toEqual({
      type: "outside-bands",
      by: "age",
      value: 2.999,
      low: 3,
    });
  });

  it.each([
    [3, 9],
    [19.9, 60],
    [20, 48],
    [49.9, 120],
  ])("of weight: %d kg gets %d mg", (kg, amount) => {
    expect(dosed(byWeight, { weights: weights(kg) }).dose.amount).toBe(amount);
  });

  it.each([2.99, 50])("of weight leave out %d kg", (kg) => {
    expect(line(byWeight, { weights: weights(kg) }).unavailable).toMatchObject({
      type: "outside-bands",
      by: "weight",
      low: 3,
      high: 50,
    });
  });

  it("of age show every choice when the age is not known", () => {
    const found = line(byAge, { weights: weights(10) });
    expect(found.unavailable).toEqual({
      type: "age-missing",
      choices: [
        {
          lowMonths: 3,
          highMonths: 12,
          dose: { amount: 2, unit: "mg" },
          volume: { ml: 2, strength: "1 mg/mL", syringeMl: 3 },
        },
        {
          lowMonths: 12,
          dose: { amount: 5, unit: "mg" },
          volume: { ml: 5, strength: "1 mg/mL", syringeMl: 5 },
        },
      ],
    });
  });

  it("of age fall back to the rule by weight where there is one, and say so", () => {
    const found = dosed({ ...byAge, whenAgeUnknown: mgPerKg(0.3) }, { weights: weights(10) });
    expect(found.dose.amount).toBe(3);
    expect(found.warnings).toContainEqual({ type: "age-needed", for: "band" });
  });
});

describe("body surface", () => {
  it("is Mosteller's: 10 kg and 72 cm have 0.45 m2", () => {
    const rule: Rule = { kind: "per-m2", amountPerM2: 100, unit: "mg" };
    const found = dosed(rule, { weights: weights(10), lengthCm: centimetres(72) });
    expect(found.working[0]).toMatchObject({
      step: "per-m2",
      surfaceM2: 0.45,
      result: { amount: 45, unit: "mg" },
    });
    expect(line(rule, { weights: weights(10) }).unavailable).toEqual({ type: "length-missing" });
  });
});

describe("limits of use", () => {
  const from1Year = {
    by: "age",
    lowMonths: 12,
    effect: "contraindicated",
    reason: "Not under 1 year.",
    citations,
  } as const;

  it("refuse a child they exclude, with the reason, and keep the line", () => {
    const use = { limits: [from1Year] };
    expect(line(mgPerKg(1), { weights: weights(9), ageMonths: months(11.9) }, { use }).unavailable).toEqual({
      type: "contraindicated",
      by: "age",
      value: 11.9,
      low: 12,
      reason: "Not under 1 year.",
    });
    expect(
      line(mgPerKg(1), { weights: weights(9), ageMonths: months(12) }, { use }).unavailable,
    ).toBeUndefined();
  });

  it("ask for the age where it is not known, unless the weight settles it", () => {
    const asks = (kg: number) =>
      types(
        line(mgPerKg(1), { weights: weights(kg) }, { use: { limits: [{ ...from1Year, passedAtKg: 14 }] } }),
      );
    expect(asks(13.9)).toContain("age-needed");
    expect(asks(14)).not.toContain("age-needed");
  });

  it("warn outside a range of weight", () => {
    const limit = { by: "weight", highKg: 40, effect: "caution", reason: "Adult dose.", citations } as const;
    const found = line(mgPerKg(1), { weights: weights(40) }, { use: { limits: [limit] } });
    expect(found.warnings).toContainEqual({
      type: "outside-weight-range",
      kg: 40,
      highKg: 40,
      reason: "Adult dose.",
    });
  });

  it.each([
    { kg: 4, age: 0.9, because: "age" },
    { kg: 2.9, age: 3, because: "weight" },
    { kg: 4, age: 0.95, because: undefined },
  ])("call $kg kg at $age months a neonate by $because", ({ kg, age, because }) => {
    const found = line(
      mgPerKg(1),
      { weights: weights(kg), ageMonths: months(age) },
      { use: { neonates: "not-covered" } },
    );
    expect(found.warnings.find(({ type }) => type === "neonate")).toEqual(
      because && { type: "neonate", because },
    );
  });

  it("ask whether a small child of unknown age is a neonate", () => {
    const asks = (kg: number) =>
      types(line(mgPerKg(1), { weights: weights(kg) }, { use: { neonates: "not-covered" } }));
    expect(asks(5.6)).toContain("age-needed");
    expect(asks(5.7)).not.toContain("age-needed");
  });
});

describe("the weight in the arithmetic", () => {
  it("is an estimate to 0.1 kg, or a reading of a scale to 0.01 kg", () => {
    const cumulative = () => 0.5;
    expect(dosed(mgPerKg(1), { weights: { ...weights(28.1349), cumulative } }).basisKg).toBe(28.1);
    expect(dosed(mgPerKg(1), { weights: { ...weights(2.3449), cumulative } }).basisKg).toBe(2.34);
    expect(dosed(mgPerKg(1), { weights: weights(8.654) }).basisKg).toBe(8.65);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1001])("throws on %d kg", (kg) => {
    const totalKg = kg as ReturnType<typeof kilograms>;
    expect(() => line(mgPerKg(1), { weights: { totalKg } })).toThrow(
      `Cannot compute a sheet as totalKg must be in (0, 1000]: current value is ${kg}`,
    );
  });

  it("throws on an age below 0 and on an option that does not exist", () => {
    expect(() => line(mgPerKg(1), { weights: weights(10), ageMonths: months(-1) })).toThrow("ageMonths");
    expect(() => line(mgPerKg(1), { weights: weights(10), lengthCm: centimetres(0) })).toThrow("lengthCm");
    expect(() => line(mgPerKg(1), { weights: weights(10), choices: { "test.use": "none" } })).toThrow(
      "option",
    );
  });
});
