import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { splineSize, splineValue, splineWeights } from "./cubic-spline.ts";

const basis = { low: 1, high: 4, intervals: 6 };
const inside = fc.double({ min: 1, max: 4, noNaN: true });

describe("the cubic B-spline", () => {
  it("has weights that add to 1", () => {
    fc.assert(
      fc.property(inside, (x) => {
        const { weights } = splineWeights(basis, x);
        expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
        expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
      }),
      { seed: 4 },
    );
  });

  it("reproduces a straight line and a parabola from the blossoms of their knots", () => {
    // A uniform cubic spline with coefficients f(knot) is f itself for a line, and f + h^2 f''/6 for a parabola
    // (de Boor, source deboor1978).
    const h = (basis.high - basis.low) / basis.intervals;
    const knots = Array.from({ length: splineSize(basis) }, (_, i) => basis.low + (i - 1) * h);
    fc.assert(
      fc.property(inside, (x) => {
        expect(
          splineValue(
            basis,
            knots.map((k) => 3 * k - 2),
            x,
          ),
        ).toBeCloseTo(3 * x - 2, 10);
        expect(
          splineValue(
            basis,
            knots.map((k) => k * k),
            x,
          ),
        ).toBeCloseTo(x * x + (h * h) / 3, 10);
      }),
      { seed: 5 },
    );
  });

  it("stays at its end values outside", () => {
    const coefficients = [1, 2, 0, 3, 1, 4, 2, 5, 3];
    expect(splineValue(basis, coefficients, 9)).toBe(splineValue(basis, coefficients, 4));
  });

  it("throws when coefficients are missing", () => {
    expect(() => splineValue(basis, [1, 2], 2)).toThrow("needs 9 coefficients: current number is 2");
  });
});
