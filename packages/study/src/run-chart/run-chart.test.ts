import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestForLimits, individualsLimits, runChart } from "./run-chart.ts";

const seed = 20_261_125;

describe("individualsLimits()", () => {
  it("gives the limits that the handbook prints for its flow rates", () => {
    // @source nist-eda-handbook, 6.3.2.2, example
    const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const { low, centre, high } = individualsLimits(flow);
    expect(centre).toBeCloseTo(50.81, 2);
    expect(high).toBeCloseTo(55.8041, 3);
    expect(low).toBeCloseTo(45.8159, 3);
  });

  it("refuses fewer than two values and what is no number", () => {
    expect(() => individualsLimits([1])).toThrow("there are 1");
    expect(() => individualsLimits([1, Number.NaN])).toThrow(RangeError);
  });
});

describe("runChart()", () => {
  const around = Array.from({ length: fewestForLimits - 1 }, (_, i) => (i % 2 === 0 ? 3 : -3));

  it("draws no limits from few values, and says nothing is outside", () => {
    const chart = runChart(around);
    expect(chart.limits).toBeUndefined();
    expect(chart.points.every(({ signals }) => signals.length === 0)).toBe(true);
    expect(runChart([])).toEqual({ points: [] });
  });

  it("marks eight in a row on one side, not seven", () => {
    const marked = (length: number): number =>
      runChart([
        ...Array.from({ length }, () => 1),
        ...Array.from({ length }, (_, i) => (i % 2 === 0 ? -3 : 1)),
      ])
        .points.slice(0, length)
        .filter(({ signals }) => signals.includes("long-run")).length;
    expect(marked(8)).toBeGreaterThanOrEqual(8);
    expect(marked(7)).toBe(0);
  });

  it("is the same chart for values in another unit or moved", () => {
    const values = fc.array(
      fc.integer({ min: -4000, max: 4000 }).map((n) => n / 100),
      {
        minLength: fewestForLimits,
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(values, (own) => {
        // A power of two and a whole number: exact in binary, so that no signal hangs on rounding.
        const moved = runChart(own.map((value) => 4 * value));
        const chart = runChart(own);
        expect(moved.points.map(({ signals }) => signals)).toEqual(
          chart.points.map(({ signals }) => signals),
        );
        expect((moved.limits?.high ?? 0) - (moved.centre ?? 0)).toBeCloseTo(
          4 * ((chart.limits?.high ?? 0) - (chart.centre ?? 0)),
          6,
        );
      }),
      { seed, numRuns: 100 },
    );
  });
});
