import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centimetres, kilograms } from "../units/index.ts";
import { adjustedWeight } from "./adjusted-weight.ts";
import { bodySurfaceArea } from "./body-surface-area.ts";
import { leanWeight } from "./lean-weight.ts";

const run = { seed: 20261125 };
const kg = fc.double({ min: 1, max: 200, noNaN: true });
const cm = fc.double({ min: 45, max: 205, noNaN: true });
const zero = kilograms(0);

describe("adjustedWeight()", () => {
  it("lies between ideal and total weight", () => {
    fc.assert(
      fc.property(kg, kg, (total, ideal) => {
        const adjusted = adjustedWeight({ totalKg: kilograms(total), idealKg: kilograms(ideal) });
        expect(adjusted).toBeGreaterThanOrEqual(Math.min(total, ideal) - 1e-9);
        expect(adjusted).toBeLessThanOrEqual(Math.max(total, ideal) + 1e-9);
      }),
      run,
    );
  });

  it("throws on a weight of 0", () => {
    expect(() => adjustedWeight({ totalKg: zero, idealKg: kilograms(10) })).toThrow(RangeError);
    expect(() => adjustedWeight({ totalKg: kilograms(10), idealKg: Number.NaN as never })).toThrow(
      RangeError,
    );
  });
});

describe("leanWeight() and bodySurfaceArea()", () => {
  it("rise with weight and length; lean weight never passes total weight", () => {
    fc.assert(
      fc.property(kg, cm, (total, length) => {
        const child = { totalKg: kilograms(total), lengthCm: centimetres(length) };
        const heavier = { ...child, totalKg: kilograms(total * 1.01) };
        const longer = { ...child, lengthCm: centimetres(length * 1.01) };
        expect(leanWeight(child)).toBeLessThanOrEqual(total);
        expect(leanWeight(heavier)).toBeGreaterThan(leanWeight(child));
        expect(leanWeight(longer)).toBeGreaterThanOrEqual(leanWeight(child));
        expect(bodySurfaceArea(heavier)).toBeGreaterThan(bodySurfaceArea(child));
        expect(bodySurfaceArea(longer)).toBeGreaterThan(bodySurfaceArea(child));
      }),
      run,
    );
  });

  it("takes the total weight where the formula would pass it", () => {
    expect(leanWeight({ totalKg: kilograms(30), lengthCm: centimetres(175) })).toBe(30);
  });

  it("throw on a weight or a length of 0", () => {
    expect(() => leanWeight({ totalKg: zero, lengthCm: centimetres(100) })).toThrow(RangeError);
    expect(() => bodySurfaceArea({ totalKg: kilograms(10), lengthCm: centimetres(0) })).toThrow(RangeError);
  });
});
