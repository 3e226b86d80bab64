import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCumulative } from "./normal-cumulative.ts";

// Abramowitz and Stegun, Table 26.1 (P(x), 15 decimals) and 26.2 (tail), source abramowitz1964.
const table = [
  { z: 0, p: 0.5 },
  { z: 0.5, p: 0.691462461274013 },
  { z: 1, p: 0.841344746068543 },
  { z: 2, p: 0.977249868051821 },
  { z: 3, p: 0.99865010196837 },
] as const;

/** Marsaglia's series, summed until it stops changing: an independent way to the same number. */
function bySeries(z: number): number {
  let term = z;
  let sum = z;
  for (let i = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && i < 600; i += 2) {
    term *= (z * z) / i;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

describe("normalCumulative()", () => {
  it.each(table)("gives the printed value at $z", ({ z, p }) => {
    expect(normalCumulative(z)).toBeCloseTo(p, 13);
    expect(normalCumulative(-z)).toBeCloseTo(1 - p, 13);
  });

  it("gives the printed tails", () => {
    expect(normalCumulative(-4) / 3.167124183311986e-5).toBeCloseTo(1, 10);
    expect(normalCumulative(-5) / 2.8665157187919e-7).toBeCloseTo(1, 10);
  });

  it("agrees with the series everywhere in between", () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        expect(Math.abs(normalCumulative(z) - bySeries(z))).toBeLessThan(1e-13);
      }),
      { seed: 1 },
    );
  });

  it("throws on NaN", () => {
    expect(() => normalCumulative(Number.NaN)).toThrow(RangeError);
  });
});
