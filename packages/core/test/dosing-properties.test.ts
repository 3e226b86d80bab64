import {
  computeSheet,
  type DoseLine,
  infusionDose,
  infusionRateMlPerH,
  type PerKgRule,
  type SheetLine,
} from "@steelyard/core/dosing";
import { convertDose, kilograms } from "@steelyard/core/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareProducts } from "./support/exact-decimal.ts";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const RUNS = { seed: 20261125, numRuns: 2000 };

const round = (value: number) => Number(value.toPrecision(3));
const amount = (min: number, max: number) =>
  fc.double({ min: Math.log10(min), max: Math.log10(max), noNaN: true }).map((power) => round(10 ** power));
const weightKg = fc.integer({ min: 10, max: 2000 }).map((tenths) => tenths / 10);

/** A rule in micrograms or mg with a strength in mg that gives between 0.002 and 2 mL/kg, and perhaps limits. */
const task = fc
  .record({
    amountPerKg: amount(0.001, 100),
    mlPerKg: amount(0.002, 2),
    maximumFactor: fc.option(amount(15, 300), { nil: undefined }),
    minimumFactor: fc.option(amount(0.5, 10), { nil: undefined }),
    isMicrogram: fc.boolean(),
  })
  .map(({ amountPerKg, mlPerKg, maximumFactor, minimumFactor, isMicrogram }) => {
    const unit = isMicrogram ? ("microgram" as const) : ("mg" as const);
    const inMg = isMicrogram ? 1e-3 : 1;
    const dose = (factor: number) => ({ amount: round(amountPerKg * factor), unit });
    const rule: PerKgRule = {
      kind: "per-kg",
      amountPerKg,
      unit,
      basis: "total",
      ...(maximumFactor !== undefined && { maximum: dose(maximumFactor) }),
      ...(minimumFactor !== undefined && { minimum: dose(minimumFactor) }),
    };
    const strength = strengthOf(round((amountPerKg * inMg) / mlPerKg), "mg");
    return { rule, strength, formulary: oneUseFormulary({ rule, strengths: [strength] }) };
  });

function only(lines: readonly SheetLine[]): DoseLine {
  const [line] = lines;
  if (line === undefined || line.unavailable) throw new Error("expected one line with a dose");
  return line;
}

const lineFor = (formulary: ReturnType<typeof oneUseFormulary>, kg: number): DoseLine =>
  only(computeSheet({ formulary, weights: { totalKg: kilograms(kg) } }));

describe("a dose as drawn up", () => {
  it("is never above its single maximum", () => {
    const check = fc.property(task, weightKg, ({ rule, formulary }, kg) => {
      const { dose } = lineFor(formulary, kg);
      if (rule.maximum === undefined) return;
      expect(compareProducts([dose.amount], [rule.maximum.amount])).toBeLessThanOrEqual(0);
    });
    fc.assert(check, RUNS);
  });

  it("is its volume times its strength, to the last digit", () => {
    const check = fc.property(task, weightKg, ({ strength, formulary }, kg) => {
      const { dose, volume } = lineFor(formulary, kg);
      if (volume === undefined) return;
      const { takeMl, addMl } = volume.dilution ?? { takeMl: 1, addMl: 0 };
      const inMg = dose.unit === "mg" ? 1 : 0.001;
      expect(
        compareProducts([volume.ml, strength.amountPerMl, takeMl], [dose.amount, inMg, takeMl + addMl]),
      ).toBe(0);
    });
    fc.assert(check, RUNS);
  });

  it("is within 5 % of the rule after its limits, or within 10 % and marked, or has no volume and is marked", () => {
    const check = fc.property(task, weightKg, ({ rule, formulary }, kg) => {
      const { dose, volume, warnings } = lineFor(formulary, kg);
      const asked = Math.min(
        Math.max(rule.amountPerKg * kg, rule.minimum?.amount ?? 0),
        rule.maximum?.amount ?? Number.POSITIVE_INFINITY,
      );
      const percent = 100 * Math.abs(dose.amount / asked - 1);
      const isMarked = warnings.some((warning) => warning.type === "rounded" && warning.aboveTolerance);
      if (volume === undefined) {
        expect(warnings.map(({ type }) => type)).toContain("not-measurable");
        expect(percent).toBeLessThan(1e-9);
      } else {
        expect(percent).toBeLessThan(isMarked ? 10.05 : 5.05);
        expect(volume.ml).toBeGreaterThanOrEqual(0.1);
      }
    });
    fc.assert(check, RUNS);
  });

  it("does not fall as the child gets heavier", () => {
    const check = fc.property(task, weightKg, weightKg, ({ formulary }, a, b) => {
      const [light, heavy] = [lineFor(formulary, Math.min(a, b)), lineFor(formulary, Math.max(a, b))];
      expect(light.dose.amount).toBeLessThanOrEqual(heavy.dose.amount);
    });
    fc.assert(check, RUNS);
  });

  it("is the same whatever unit the rule is written in", () => {
    const check = fc.property(task, weightKg, ({ rule, strength }, kg) => {
      const to = rule.unit === "mg" ? ("microgram" as const) : ("mg" as const);
      const inOther: PerKgRule = {
        ...rule,
        amountPerKg: convertDose({ dose: { amount: rule.amountPerKg, unit: rule.unit }, to }).amount,
        unit: to,
      };
      const one = lineFor(oneUseFormulary({ rule, strengths: [strength] }), kg);
      const other = lineFor(oneUseFormulary({ rule: inOther, strengths: [strength] }), kg);
      expect(other.volume).toEqual(one.volume);
      expect(convertDose({ dose: other.dose, to: rule.unit })).toEqual(one.dose);
    });
    fc.assert(check, RUNS);
  });
});

describe("infusionRateMlPerH() and infusionDose()", () => {
  it("are each other's inverse", () => {
    const check = fc.property(
      amount(0.001, 100),
      weightKg,
      amount(0.01, 100),
      fc.constantFrom("min" as const, "h" as const),
      (perKg, kg, amountPerMl, per) => {
        const arithmetic = { kg, per, concentration: { amountPerMl, unit: "mg" as const } };
        const mlPerH = infusionRateMlPerH({ ...arithmetic, perKg: { amount: perKg, unit: "microgram" } });
        const dose = infusionDose({ ...arithmetic, mlPerH, unit: "microgram" });
        expect(dose.amount / perKg).toBeCloseTo(1, 10);
      },
    );
    fc.assert(check, RUNS);
  });

  it("throw on what no infusion has", () => {
    const concentration = { amountPerMl: 1, unit: "mg" } as const;
    const perKg = { amount: 1, unit: "mg" } as const;
    expect(() => infusionRateMlPerH({ perKg, per: "h", kg: 0, concentration })).toThrow(RangeError);
    expect(() =>
      infusionRateMlPerH({ perKg: { amount: Number.NaN, unit: "mg" }, per: "h", kg: 1, concentration }),
    ).toThrow(RangeError);
    expect(() =>
      infusionRateMlPerH({ perKg: { amount: 1, unit: "unit" }, per: "h", kg: 1, concentration }),
    ).toThrow(TypeError);
  });
});
