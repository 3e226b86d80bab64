import fc from "fast-check";
import { expect, test } from "vitest";
import { kilogramScale } from "./kilogram-scale.ts";

const ranges = fc
  .record({
    totalKg: fc.double({ min: 1.5, max: 200, noNaN: true }),
    spread: fc.double({ min: 0, max: 1, noNaN: true }),
    idealShare: fc.double({ min: 0.7, max: 1.5, noNaN: true }),
  })
  .map(({ totalKg, spread, idealShare }) => ({
    low95Kg: totalKg / (1 + spread),
    high95Kg: totalKg * (1 + spread),
    marksKg: [totalKg * idealShare],
  }));

test("the scale holds the whole range and what lies near it, and starts no lower than 0", () => {
  fc.assert(
    fc.property(ranges, (weight) => {
      const { lowKg, highKg } = kilogramScale(weight);
      expect(lowKg).toBeGreaterThanOrEqual(0);
      expect(lowKg).toBeLessThanOrEqual(Math.min(weight.low95Kg, ...weight.marksKg));
      expect(highKg).toBeGreaterThanOrEqual(Math.max(weight.high95Kg, ...weight.marksKg));
    }),
    { seed: 8317 },
  );
});

test("two to six round numbers stand on it, rising in equal steps", () => {
  fc.assert(
    fc.property(ranges, (weight) => {
      const { lowKg, highKg, ticksKg, stepKg } = kilogramScale(weight);
      expect(ticksKg.length).toBeGreaterThanOrEqual(2);
      expect(ticksKg.length).toBeLessThanOrEqual(6);
      for (const kg of ticksKg) {
        expect(kg).toBeGreaterThanOrEqual(lowKg - 1e-6);
        expect(kg).toBeLessThanOrEqual(highKg + 1e-6);
        expect(Math.abs(kg / stepKg - Math.round(kg / stepKg))).toBeLessThan(1e-6);
      }
    }),
    { seed: 8317 },
  );
});

test("a range of 25.1 to 31.4 kg is written in fives", () => {
  expect(kilogramScale({ low95Kg: 25.1, high95Kg: 31.4, marksKg: [30] }).ticksKg).toEqual([25, 30]);
});

test("a weight that is far off does not squeeze the range", () => {
  const range = { low95Kg: 25.1, high95Kg: 31.4 };
  expect(kilogramScale({ ...range, marksKg: [90] })).toEqual(kilogramScale(range));
});
