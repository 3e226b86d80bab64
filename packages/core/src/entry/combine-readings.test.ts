import fc from "fast-check";
import { expect, test } from "vitest";
import { combineReadings } from "./combine-readings.ts";

test("the limit is 2.77 technical errors of the log, to a tenth", () => {
  expect(combineReadings({ field: "lengthCm", readings: [100] }).limit).toBe(1.7);
  expect(combineReadings({ field: "armMm", readings: [100] }).limit).toBe(8.7);
});

test("a third reading is asked for past the limit, and once", () => {
  expect(combineReadings({ field: "armMm", readings: [190, 198.7] }).needsThird).toBe(false);
  expect(combineReadings({ field: "armMm", readings: [190, 198.8] }).needsThird).toBe(true);
  expect(combineReadings({ field: "armMm", readings: [190, 210, 191] }).needsThird).toBe(false);
});

test("the value lies among the readings and does not depend on their order", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 45, max: 205, noNaN: true }), { minLength: 1, maxLength: 3 }),
      (readings) => {
        const { value } = combineReadings({ field: "lengthCm", readings });
        expect(value).toBeGreaterThanOrEqual(Math.min(...readings) - 1e-9);
        expect(value).toBeLessThanOrEqual(Math.max(...readings) + 1e-9);
        expect(combineReadings({ field: "lengthCm", readings: readings.toReversed() }).value).toBe(value);
      },
    ),
    { seed: 8317 },
  );
});

test.each([[[]], [[1, 2, 3, 4]], [[Number.NaN, 1]]])("throws on %j", (readings) => {
  expect(() => combineReadings({ field: "armMm", readings })).toThrow(RangeError);
});
