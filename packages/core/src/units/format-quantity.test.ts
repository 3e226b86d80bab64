import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  convertDose,
  type Dose,
  type DoseUnit,
  formatConcentration,
  formatNumber,
  formatQuantity,
  formatWeight,
} from "./index.ts";

const RUNS = { seed: 20261125, numRuns: 1000 };
const spaced = (text: string) => text.replaceAll("\u00a0", " ");

describe("formatNumber()", () => {
  it.each([
    [0, "0"],
    [0.5, "0.5"],
    [1, "1"],
    [0.1 * 3, "0.3"],
    [1000, "1,000"],
    [4500, "4,500"],
    [1_234_567, "1,234,567"],
    [1234.5, "1,234.5"],
    [1 / 3, "0.3333"],
    [281 / 3, "93.67"],
    [1e-7, "0.0000001"],
    [1e21, "1,000,000,000,000,000,000,000"],
    [-2.5, "−2.5"],
    [-0, "0"],
    [999.99999, "1,000"],
  ])("writes %d as %s", (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  it("has a leading zero, no trailing zero, no exponent, and commas from 1,000", () => {
    const numbers = fc.double({ min: 0, max: 1e9, noNaN: true });
    const check = fc.property(numbers, (value) => {
      expect(formatNumber(value)).toMatch(/^(0|[1-9]\d{0,2}(,\d{3})*)(\.\d*[1-9])?$/);
    });
    fc.assert(check, RUNS);
  });

  it("stays within half a unit of the fourth digit", () => {
    const numbers = fc.double({ min: 1e-6, max: 1e9, noNaN: true });
    const check = fc.property(numbers, (value) => {
      const read = Number(formatNumber(value).replaceAll(",", ""));
      expect(Math.abs(read - value)).toBeLessThanOrEqual(value * 5.0001e-4);
    });
    fc.assert(check, RUNS);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("throws on %d", (value) => {
    expect(() => formatNumber(value)).toThrow("must be finite");
  });
});

describe("formatQuantity()", () => {
  const rows: readonly [Dose, string][] = [
    [{ amount: 281, unit: "microgram" }, "281 micrograms"],
    [{ amount: 1, unit: "microgram" }, "1 microgram"],
    [{ amount: 1000, unit: "microgram" }, "1 mg"],
    [{ amount: 1250, unit: "microgram" }, "1.25 mg"],
    [{ amount: 0.5, unit: "mg" }, "500 micrograms"],
    [{ amount: 0.0004, unit: "mg" }, "400 nanograms"],
    [{ amount: 0.281, unit: "mg" }, "281 micrograms"],
    [{ amount: 0, unit: "mg" }, "0 mg"],
    [{ amount: 4500, unit: "mg" }, "4,500 mg"],
    [{ amount: 1.8, unit: "g" }, "1.8 g"],
    [{ amount: 10, unit: "unit" }, "10 units"],
    [{ amount: 1, unit: "unit" }, "1 unit"],
    [{ amount: 0.5, unit: "unit" }, "0.5 units"],
    [{ amount: 0.5, unit: "mL" }, "0.5 mL"],
    [{ amount: 4.5, unit: "mmol" }, "4.5 mmol"],
    [{ amount: 120, unit: "J" }, "120 J"],
    [{ amount: 0.1, unit: "microgram", per: "kg/min" }, "0.1 micrograms/kg/min"],
    [{ amount: 0.1, unit: "mg", per: "kg" }, "0.1 mg/kg"],
    [{ amount: 500, unit: "mg", per: "m2" }, "500 mg/m²"],
    [{ amount: 4.7, unit: "mL", per: "h" }, "4.7 mL/h"],
  ];

  it.each(rows)("writes %o as %s", (dose, text) => {
    expect(spaced(formatQuantity(dose))).toBe(text);
  });

  it("never breaks the line before the unit and never shortens units that are misread", () => {
    const units = fc.constantFrom<DoseUnit>("g", "mg", "microgram", "nanogram", "mmol", "unit", "mL", "J");
    const check = fc.property(fc.double({ min: 0, max: 1e7, noNaN: true }), units, (amount, unit) => {
      const text = formatQuantity({ amount, unit });
      expect(text).toMatch(/^[\d,.]+\u00a0(g|mg|micrograms?|nanograms?|mmol|units?|mL|J)$/);
      expect(text).not.toMatch(/\.\d*0\u00a0|^\./);
    });
    fc.assert(check, RUNS);
  });
});

describe("formatConcentration() and formatWeight()", () => {
  it("keep the unit of the label", () => {
    expect(spaced(formatConcentration({ amountPerMl: 0.1, unit: "mg" }))).toBe("0.1 mg/mL");
    expect(spaced(formatConcentration({ amountPerMl: 60, unit: "microgram" }))).toBe("60 micrograms/mL");
    expect(spaced(formatWeight(28.1))).toBe("28.1 kg");
  });
});

describe("convertDose()", () => {
  it("comes back to where it started", () => {
    const mass = fc.constantFrom<DoseUnit>("g", "mg", "microgram", "nanogram");
    const amounts = fc.integer({ min: 1, max: 999_999 }).map((value) => value / 1000);
    const check = fc.property(amounts, mass, mass, (amount, unit, to) => {
      const dose: Dose = { amount, unit };
      expect(convertDose({ dose: convertDose({ dose, to }), to: unit })).toEqual(dose);
    });
    fc.assert(check, RUNS);
  });

  it("refuses what has no common measure", () => {
    expect(() => convertDose({ dose: { amount: 1, unit: "mg" }, to: "mmol" })).toThrow(TypeError);
    expect(() => convertDose({ dose: { amount: 1, unit: "unit" }, to: "mg" })).toThrow("one kind");
  });
});
