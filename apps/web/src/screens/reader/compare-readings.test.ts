import { weighChild } from "@steelyard/core/body";
import { centimetres, kilograms, millimetres } from "@steelyard/core/units";
import { expect, test } from "vitest";
import { compareReadings } from "./compare-readings.ts";

function child(more = {}) {
  const weighed = weighChild({
    measurements: { lengthCm: centimetres(136), armMm: millimetres(190), ...more },
  });
  if (!weighed.ok) throw new Error(weighed.error.type);
  return weighed.value;
}

test("agreement in mm and in the kilograms that the library gives each reading", () => {
  const { readings, weight, needsThird } = compareReadings(child(), { lengthCm: 136.8, armMm: 194 });
  expect(readings.map(({ field, apartMm }) => [field, apartMm])).toEqual([
    ["lengthCm", 8],
    ["armMm", 4],
  ]);
  const second = weighChild({ measurements: { lengthCm: centimetres(136.8), armMm: millimetres(194) } });
  expect(weight?.secondKg).toBe(second.ok && second.value.estimate.totalKg);
  expect(weight?.apartKg).toBeGreaterThan(0.3);
  expect(weight?.apartPercent).toBeCloseTo((100 * (weight?.apartKg ?? 0)) / (weight?.firstKg ?? 1), 0);
  expect(needsThird).toBe(false);
});

test("a third reading is asked for when one of the two is too far off", () => {
  expect(compareReadings(child(), { lengthCm: 136.8, armMm: 201 }).needsThird).toBe(true);
  expect(compareReadings(child(), { lengthCm: 138, armMm: 190 }).needsThird).toBe(true);
});

test("without a second arm the first one stays; a scale leaves no weights to compare", () => {
  const { readings, weight } = compareReadings(child(), { lengthCm: 136 });
  expect(readings).toHaveLength(1);
  expect(weight?.apartKg).toBe(0);
  expect(compareReadings(child({ scaleKg: kilograms(28) }), { lengthCm: 136 }).weight).toBeUndefined();
});
