import { draftFormulary } from "@steelyard/formulary";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adjustedWeight, estimateWeight, idealWeight, leanWeight } from "../body/index.ts";
import { centimetres, kilograms, millimetres, months } from "../units/index.ts";
import { computeChild } from "./compute-child.ts";

const lengthCm = centimetres(136);
const armMm = millimetres(190);

function reportOf(
  ...[input]: Parameters<typeof computeChild>
): Extract<ReturnType<typeof computeChild>, { ok: true }>["value"] {
  const report = computeChild(input);
  if (!report.ok) throw new Error(`Cannot serve: ${report.error.type}`);
  return report.value;
}

describe("computeChild()", () => {
  it("joins estimate, ideal, adjusted and lean weight", () => {
    const { weight, versions } = reportOf({
      measurements: { lengthCm, armMm, sex: "f", ageMonths: months(108) },
      formulary: draftFormulary,
    });
    const estimate = estimateWeight({ lengthCm, armMm, sex: "f", ageMonths: months(108) });
    const ideal = idealWeight({ lengthCm, sex: "f", ageMonths: months(108) });
    if (!estimate.ok || !ideal.ok) throw new Error("Cannot compare");
    const { totalKg, low95Kg, high95Kg, rests } = estimate.value;
    const idealKg = ideal.value;
    expect(weight).toEqual({
      totalKg,
      low95Kg,
      high95Kg,
      idealKg,
      adjustedKg: adjustedWeight({ totalKg, idealKg }),
      leanKg: leanWeight({ totalKg, lengthCm }),
      rests,
    });
    expect(versions).toMatchObject({
      formulary: draftFormulary.version,
      formularySigned: draftFormulary.signed,
    });
    expect(versions.software).toMatch(/^\d+\.\d+\.\d+$/);
  });

  it("doses on the basis each rule asks for, with robustness only for an estimate", () => {
    const estimated = reportOf({ measurements: { lengthCm, armMm }, formulary: draftFormulary });
    const scaled = reportOf({
      measurements: { lengthCm, scaleKg: kilograms(40) },
      formulary: draftFormulary,
    });
    expect(estimated.sheet.map(({ id }) => id)).toEqual(
      draftFormulary.medicines.flatMap(({ id, uses }) => uses.map((use) => `${id}.${use.id}`)),
    );
    const doses = (report: typeof scaled) =>
      report.sheet.flatMap((line) => (line.unavailable === undefined ? [line] : []));
    expect(doses(estimated).some(({ robustness }) => robustness !== undefined)).toBe(true);
    expect(doses(scaled).every(({ robustness }) => robustness === undefined)).toBe(true);
    const onIdeal = doses(scaled).filter(({ basis }) => basis === "ideal");
    expect(onIdeal.length).toBeGreaterThan(0);
    for (const { basisKg } of onIdeal)
      expect(Math.abs(basisKg - (scaled.weight.idealKg ?? 0))).toBeLessThanOrEqual(0.05);
    for (const line of doses(scaled).filter(({ basis }) => basis === "total")) expect(line.basisKg).toBe(40);
  });

  it("serves a scale weight without a length, and then no line takes a weight that is not known", () => {
    const { weight, sheet } = reportOf({
      measurements: { scaleKg: kilograms(12.34) },
      formulary: draftFormulary,
    });
    expect(weight).toEqual({ totalKg: 12.34, low95Kg: 12.34, high95Kg: 12.34, rests: ["scaleKg"] });
    for (const line of sheet) if (line.unavailable === undefined) expect(line.basis).toBe("total");
    expect(sheet.some((line) => line.unavailable?.type === "weight-missing")).toBe(true);
  });

  it("takes another published option and another name for the software", () => {
    const choices = draftFormulary.medicines.flatMap(({ id, uses }) =>
      uses.flatMap((use) => {
        const other = use.options.find((option) => option.id !== use.defaultOption);
        return other ? [[`${id}.${use.id}`, other.id] as const] : [];
      }),
    );
    const report = reportOf({
      measurements: { lengthCm, armMm },
      formulary: draftFormulary,
      choices: Object.fromEntries(choices),
      versions: { software: "test" },
    });
    expect(choices.length).toBeGreaterThan(0);
    for (const [id, option] of choices)
      expect(report.sheet.find((line) => line.id === id)?.option.id).toBe(option);
    expect(report.versions.software).toBe("test");
  });

  it("passes on why no weight can be had", () => {
    const { error } = computeChild({ measurements: { armMm }, formulary: draftFormulary }) as {
      error: unknown;
    };
    expect(error).toEqual({ type: "length-missing" });
  });

  it("lets no non-finite number out, for any child the model serves", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 45, max: 205, noNaN: true }),
        fc.double({ min: 0.8, max: 1.3, noNaN: true }),
        fc.option(fc.double({ min: 0, max: 240, noNaN: true }), { nil: undefined }),
        fc.constantFrom("m", "f", undefined),
        (length, thickness, age, sex) => {
          const report = computeChild({
            measurements: {
              lengthCm: centimetres(length),
              armMm: millimetres((105 + 1.1 * (length - 50)) * thickness),
              ...(age === undefined ? {} : { ageMonths: months(age) }),
              ...(sex === undefined ? {} : { sex }),
            },
            formulary: draftFormulary,
          });
          for (const number of numbersIn(report)) expect(Number.isFinite(number)).toBe(true);
        },
      ),
      { seed: 20261125, numRuns: 200 },
    );
  });
});

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
