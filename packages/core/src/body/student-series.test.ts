import { describe, expect, it } from "vitest";
import { studentQuantile } from "./student-quantile.ts";
import { studentSeries } from "./student-series.ts";

// Abramowitz and Stegun, Table 26.10: t with P(|T| <= t) = 0.95 and 0.99, three decimals, source abramowitz1964.
const table = [
  { df: 2, t95: 4.303, t99: 9.925 },
  { df: 4, t95: 2.776, t99: 4.604 },
  { df: 10, t95: 2.228, t99: 3.169 },
  { df: 20, t95: 2.086, t99: 2.845 },
  { df: 30, t95: 2.042, t99: 2.75 },
] as const;

describe("studentSeries() and studentQuantile()", () => {
  it.each(table)("give the printed quantiles for $df degrees of freedom", ({ df, t95, t99 }) => {
    expect(Math.abs(studentQuantile({ probability: 0.975, df }) - t95)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(studentQuantile({ probability: 0.995, df }) - t99)).toBeLessThanOrEqual(0.0005);
  });

  it.each([2, 4, 10, 30])("density is the slope of the distribution function (df %i)", (df) => {
    const { cumulative, density } = studentSeries(df);
    for (const t of [-5, -1.3, 0, 0.4, 2, 8]) {
      const h = 1e-5;
      expect((cumulative(t + h) - cumulative(t - h)) / (2 * h)).toBeCloseTo(density(t), 8);
    }
  });

  it("is symmetric and ends at 0 and 1", () => {
    const { cumulative } = studentSeries(10);
    expect(cumulative(1.7) + cumulative(-1.7)).toBeCloseTo(1, 14);
    expect([cumulative(Number.NEGATIVE_INFINITY), cumulative(Number.POSITIVE_INFINITY)]).toEqual([0, 1]);
  });

  it("throws on an odd number of degrees of freedom and on a probability of 1", () => {
    expect(() => studentSeries(5)).toThrow("even integer");
    expect(() => studentQuantile({ probability: 1, df: 4 })).toThrow("must be in (0, 1)");
  });
});
