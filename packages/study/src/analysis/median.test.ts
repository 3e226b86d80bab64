import fc from "fast-check";
import { expect, it } from "vitest";
import { medianInPlace } from "./median.ts";

it("is the middle of the sorted values", () => {
  const value = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -1e6, max: 1e6, noNaN: true }));
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 60 }), (values) => {
      const sorted = Float64Array.from(values).sort();
      const half = sorted.length / 2;
      const expected = ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
      expect(medianInPlace(Float64Array.from(values))).toBeCloseTo(
        sorted.length % 2 === 1 ? (sorted[Math.floor(half)] as number) : expected,
        9,
      );
    }),
    { seed: 7 },
  );
});
