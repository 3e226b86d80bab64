import { expect, test } from "vitest";
import { practiceChildren } from "./practice-children.ts";
import { median, practiceResult } from "./practice-result.ts";

test("there are twenty children, each its own, all postures, and each has a weight without a warning of conflict", () => {
  expect(practiceChildren).toHaveLength(20);
  expect(new Set(practiceChildren.map((child) => `${child.lengthCm} ${child.armMm}`)).size).toBe(20);
  expect(new Set(practiceChildren.map(({ posture }) => posture)).size).toBe(3);
  for (const child of practiceChildren) {
    const { drawnKg, readKg, isWithin } = practiceResult(child, child, 9);
    expect(drawnKg, JSON.stringify(child)).toBeGreaterThan(2);
    expect(readKg).toBe(drawnKg);
    expect(isWithin).toEqual({ lengthCm: true, armMm: true });
  }
});

test("a reading is judged by what careful readings differ by", () => {
  const [child] = practiceChildren;
  if (child === undefined) throw new Error("no child");
  const near = practiceResult(child, { lengthCm: child.lengthCm + 1, armMm: child.armMm - 8 }, 20);
  expect(near).toMatchObject({ errorCm: 1, errorMm: -8, isWithin: { lengthCm: true, armMm: true } });
  const far = practiceResult(child, { lengthCm: child.lengthCm + 10, armMm: child.armMm - 10 }, 20);
  expect(far).toMatchObject({ errorCm: 10, errorMm: -10, isWithin: { lengthCm: false, armMm: false } });
  expect(practiceResult(child, { lengthCm: 999, armMm: 100 }, 1).readKg).toBeUndefined();
});

test("median() is the middle one", () => {
  expect([median([3, 1, 2]), median([4, 1, 2, 3]), median([])]).toEqual([2, 2.5, 0]);
});
