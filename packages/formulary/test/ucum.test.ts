import { UcumLhcUtils } from "@lhncbc/ucum-lhc";
import { type Dose, type DoseUnit, infusionRateMlPerH } from "@steelyard/core/dosing";
import { convertDose, isConvertible } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

// Checked against the UCUM library of the US National Library of Medicine (ucum-lhc), which knows nothing of this project.
const library = UcumLhcUtils.getInstance();

/** Our units in the code of the Unified Code for Units of Measure. */
const UCUM: Readonly<Record<DoseUnit, string>> = {
  g: "g",
  mg: "mg",
  microgram: "ug",
  nanogram: "ng",
  mmol: "mmol",
  unit: "[iU]",
  mL: "mL",
  // UCUM has no unit for a puff: what is counted stands in braces, as an annotation to the number 1.
  puff: "{puff}",
  J: "J",
};
const units = Object.keys(UCUM) as DoseUnit[];
/**
 * Of two different units: UCUM compares an arbitrary unit such as [iU] not even with itself. A puff is left out beside mmol:
 * to UCUM both are plain numbers, and a puff would be some 10^-21 mmol.
 */
const pairs = units.flatMap((from) =>
  units
    .filter((to) => to !== from && ![`${from} ${to}`, `${to} ${from}`].includes("puff mmol"))
    .map((to) => [from, to] as const),
);

function codeOf({ unit, per }: Pick<Dose, "unit" | "per">): string {
  return per === undefined ? UCUM[unit] : `${UCUM[unit]}/${per === "puff" ? UCUM.puff : per}`;
}

/** Every unit with what it counts per, wherever one stands in the draft. */
function unitsIn(value: unknown): Pick<Dose, "unit" | "per">[] {
  if (typeof value !== "object" || value === null) return [];
  const { unit, per, kind } = value as { unit?: DoseUnit; per?: "min" | "h"; kind?: string };
  const inner = Object.values(value).flatMap(unitsIn);
  if (unit === undefined) return inner;
  if (kind === "infusion" || kind === "tiered-rate") return [{ unit, per: `kg/${per ?? "h"}` }, ...inner];
  if ("amountPerKg" in value) return [{ unit, per: "kg" }, ...inner];
  if ("amountPerM2" in value) return [{ unit, per: "m2" }, ...inner];
  if ("amountPerPuff" in value) return [{ unit, per: "puff" }, ...inner];
  if ("amountPerMl" in value) return [{ unit, per: "mL" }, ...inner];
  return [{ unit }, ...inner];
}

describe("units of doses against a general-purpose UCUM library", () => {
  const codes = [...new Set(unitsIn(draftFormulary.medicines).map(codeOf))].sort();

  it.each(codes)("%s of the draft is a unit", (code) => {
    expect(library.validateUnitString(code).status).toBe("valid");
  });

  it("finds the units of the draft at all, and no unit in an invented one", () => {
    expect(codes.length).toBeGreaterThan(10);
    expect(library.validateUnitString("mcg/kg").status).not.toBe("valid");
  });

  it.each(pairs)("%s converts to %s exactly where the library says so, by the same factor", (from, to) => {
    const { status, toVal } = library.convertUnitTo(UCUM[from], 1, UCUM[to]);
    expect(isConvertible(from, to)).toBe(status === "succeeded");
    if (status !== "succeeded" || toVal === null) {
      expect(() => convertDose({ dose: { amount: 1, unit: from }, to })).toThrow(TypeError);
      return;
    }
    const ours = convertDose({ dose: { amount: 1, unit: from }, to }).amount;
    expect(Math.abs(ours / toVal - 1)).toBeLessThan(1e-12);
  });

  it("keeps a puff apart from everything, mmol included, and multiplies what it holds as the library does", () => {
    for (const unit of units.filter((other) => other !== "puff")) {
      expect(isConvertible("puff", unit) || isConvertible(unit, "puff")).toBe(false);
    }
    expect(codes).toContain("ug/{puff}");
    // 10 puffs of 100 micrograms: the annotation takes no part, so the product is a mass.
    expect(library.convertUnitTo("10.{puff}.ug/{puff}", 100, "mg").toVal).toBeCloseTo(1, 12);
  });

  it("turns a dose per kg and time into mL/h as the library does", () => {
    const mass = fc.constantFrom<DoseUnit>("mg", "microgram", "nanogram");
    const facts = fc.record({
      unit: mass,
      inSyringe: mass,
      per: fc.constantFrom<"min" | "h">("min", "h"),
      amount: fc.integer({ min: 1, max: 5000 }),
      kg: fc.integer({ min: 5, max: 800 }),
      perMl: fc.integer({ min: 1, max: 900 }),
    });
    fc.assert(
      fc.property(facts, ({ unit, inSyringe, per, amount, kg, perMl }) => {
        const ours = infusionRateMlPerH({
          perKg: { amount: amount / 100, unit },
          per,
          kg: kg / 10,
          concentration: { amountPerMl: perMl / 10, unit: inSyringe },
        });
        const perKgHour = library.convertUnitTo(
          `${UCUM[unit]}/kg/${per}`,
          amount / 100,
          `${UCUM[inSyringe]}/kg/h`,
        );
        const theirs = ((perKgHour.toVal ?? Number.NaN) * (kg / 10)) / (perMl / 10);
        expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-9);
      }),
      { seed: 20261125, numRuns: 500 },
    );
  });
});
