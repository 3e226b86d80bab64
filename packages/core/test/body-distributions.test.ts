import {
  cumulativeWeight,
  densityOfComponents,
  estimateWeight,
  normalCumulative,
  studentQuantile,
  studentSeries,
} from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tailOf } from "../src/body/tail.ts";

// The distributions against their definitions, integrated numerically: nothing here uses a series, a rational
// approximation or a gamma function.

/** Composite Simpson rule over an even number of pieces. */
function integrate(f: (x: number) => number, from: number, to: number, pieces = 2000): number {
  const h = (to - from) / pieces;
  let sum = f(from) + f(to);
  for (let i = 1; i < pieces; i++) sum += f(from + i * h) * (i % 2 === 0 ? 2 : 4);
  return (sum * h) / 3;
}

/** P(T <= t) by t = sqrt(df) tan(angle): the density becomes cos(angle)^(df - 1), over (-pi/2, pi/2). */
function studentByIntegration(df: number, t: number): number {
  const kernel = (angle: number): number => Math.cos(angle) ** (df - 1);
  const half = integrate(kernel, 0, Math.PI / 2);
  return 0.5 + integrate(kernel, 0, Math.atan(t / Math.sqrt(df))) / (2 * half);
}

const even = fc.integer({ min: 1, max: 25 }).map((half) => 2 * half);

describe("Student's t, integrated numerically", () => {
  it("has the distribution function of studentSeries() for every even df to 50", () => {
    fc.assert(
      fc.property(even, fc.double({ min: -30, max: 30, noNaN: true }), (df, t) => {
        expect(Math.abs(studentSeries(df).cumulative(t) - studentByIntegration(df, t))).toBeLessThan(1e-11);
      }),
      { seed: 31, numRuns: 300 },
    );
  });

  it("has the density of studentSeries(): the kernel over its own integral", () => {
    fc.assert(
      fc.property(even, fc.double({ min: -30, max: 30, noNaN: true }), (df, t) => {
        const area = 2 * Math.sqrt(df) * integrate((angle) => Math.cos(angle) ** (df - 1), 0, Math.PI / 2);
        const expected = (1 + (t * t) / df) ** (-(df + 1) / 2) / area;
        expect(studentSeries(df).density(t) / expected).toBeCloseTo(1, 10);
      }),
      { seed: 32, numRuns: 300 },
    );
  });

  it("leaves each probability below the quantile of studentQuantile()", () => {
    const probabilities = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(even, probabilities, (df, probability) => {
        const t = studentQuantile({ probability, df });
        expect(Math.abs(studentByIntegration(df, t) - probability)).toBeLessThan(1e-11);
      }),
      { seed: 33, numRuns: 200 },
    );
  });
});

describe("the normal distribution, integrated numerically", () => {
  it("is what normalCumulative() gives", () => {
    const density = (z: number): number => Math.exp((-z * z) / 2);
    const whole = integrate(density, -12, 12);
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (z) => {
        expect(Math.abs(normalCumulative(z) - 0.5 - integrate(density, 0, z) / whole)).toBeLessThan(1e-12);
      }),
      { seed: 34, numRuns: 300 },
    );
  });
});

describe("the tails an estimate uses", () => {
  it.each([undefined, 4, 10, 30])("have their quantiles where their probability says (df %s)", (df) => {
    const { quantile, density } = tailOf(df);
    // Beyond 4,000 the heaviest of these tails holds less than 1e-9.
    const steps = [0, 1, 4, 16, 64, 256, 4000];
    const above = steps.slice(1).reduce((sum, to, i) => sum + integrate(density, steps[i] as number, to), 0);
    expect(above).toBeCloseTo(0.5, 9);
    for (const probability of [0.0025, 0.025, 0.5, 0.975, 0.9975]) {
      expect(0.5 + integrate(density, 0, quantile(probability))).toBeCloseTo(probability, 10);
    }
    expect(() => quantile(0.9)).toThrow(RangeError);
  });
});

describe("the weight of a child of unknown sex", () => {
  it.each([
    { lengthCm: 58, armMm: 115 },
    { lengthCm: 100, armMm: 150 },
    { lengthCm: 136, armMm: 300 },
    { lengthCm: 175, armMm: 270 },
  ])("at $lengthCm cm and $armMm mm has a density that adds up to its distribution function", (child) => {
    const estimate = estimateWeight({
      lengthCm: centimetres(child.lengthCm),
      armMm: millimetres(child.armMm),
    });
    if (!estimate.ok) throw new Error(JSON.stringify(estimate.error));
    const { components, low95Kg, high95Kg, totalKg } = estimate.value;
    expect(components).toHaveLength(2);
    const density = (kg: number): number => densityOfComponents(components, kg);
    const lowest = totalKg / 3;
    let cumulative = cumulativeWeight(estimate.value, lowest);
    let from = lowest;
    for (const kg of [low95Kg, totalKg, high95Kg, 2 * totalKg, 3 * totalKg]) {
      cumulative += integrate(density, from, kg);
      from = kg;
      // Simpson's rule meets a corner where the curve goes on straight.
      expect(Math.abs(cumulative - cumulativeWeight(estimate.value, kg))).toBeLessThan(1e-8);
    }
    expect(cumulative).toBeGreaterThan(0.999);
  });
});
