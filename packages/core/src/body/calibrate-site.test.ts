import { describe, expect, it } from "vitest";
import { centimetres, millimetres } from "../units/index.ts";
import { type Calibration, calibrateSite } from "./calibrate-site.ts";
import { estimateWeight } from "./estimate-weight.ts";
import { defaultMeasurementErrors } from "./measurement-errors.ts";
import { normalQuantile } from "./normal-quantile.ts";
import type { WeighedChild } from "./score-rows.ts";
import { quantileOfComponents } from "./weight-distribution.ts";

/** Uniform numbers from a seed (Park and Miller), for invented children. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Invented children of 70 to 170 cm whose scale weight is that of the model, `factor` times, with the model's own spread. */
function invented({ n, factor, seed }: { n: number; factor: number; seed: number }): WeighedChild[] {
  const random = seeded(seed);
  return Array.from({ length: n }, () => {
    const lengthCm = 70 + 100 * random();
    const armMm = (130 + 1.1 * (lengthCm - 70)) * (0.9 + 0.25 * random());
    const measurements = { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) };
    const own = estimateWeight(measurements);
    if (!own.ok) throw new Error("the invented child is outside the model");
    const middle = own.value.totalKg;
    return {
      measurements,
      weightKg: factor * middle * Math.exp(0.055 * normalQuantile(0.001 + 0.998 * random())),
    };
  });
}

function calibrate(rows: readonly WeighedChild[]): Calibration {
  const result = calibrateSite(rows);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe("calibrateSite()", () => {
  it("finds a population that is 6 % heavier than the fit, and takes the error away", () => {
    const { before, after, site } = calibrate(invented({ n: 150, factor: 1.06, seed: 11 }));
    expect(before.meanError).toBeLessThan(-4);
    expect(Math.abs(after.meanError)).toBeLessThan(1);
    expect(after.within10).toBeGreaterThan(before.within10);
    expect(site.population.shift).toBeGreaterThan(0.5);
  });

  it("moves little on few children and hardly at all where there is nothing to find", () => {
    const few = calibrate(invented({ n: 20, factor: 1.06, seed: 5 })).site.population;
    const many = calibrate(invented({ n: 400, factor: 1.06, seed: 5 })).site.population;
    expect(few.variance.shift).toBeGreaterThan(many.variance.shift);
    // Shift and slope share what little there is: together they move the middle child by less than a quarter of the spread.
    const none = calibrate(invented({ n: 400, factor: 1, seed: 7 }));
    expect(Math.abs(none.site.population.shift)).toBeLessThan(0.25);
    expect(Math.abs(none.after.meanError)).toBeLessThan(0.7);
  });

  it("is not moved by a few slips", () => {
    const rows = invented({ n: 100, factor: 1, seed: 3 });
    const clean = calibrate(rows).site.population.shift;
    const slips = rows.map((row, i) => (i < 3 ? { ...row, weightKg: row.weightKg * 2.2 } : row));
    expect(Math.abs(calibrate(slips).site.population.shift - clean)).toBeLessThan(0.1);
  });

  it("does not depend on the order of the rows", () => {
    const rows = invented({ n: 60, factor: 1.03, seed: 9 });
    const [forward, backward] = [calibrate(rows), calibrate([...rows].reverse())];
    expect(backward.site.population.shift).toBeCloseTo(forward.site.population.shift, 9);
  });

  it("narrows the interval of the next child once there are enough", () => {
    const { site } = calibrate(invented({ n: 200, factor: 1, seed: 21 }));
    const child = { lengthCm: centimetres(110), armMm: millimetres(170) };
    const width = (own: typeof site | undefined): number => {
      const estimate = estimateWeight(child, own === undefined ? {} : { site: own });
      if (!estimate.ok) throw new Error("refused");
      return estimate.value.high95Kg - estimate.value.low95Kg;
    };
    expect(width(site)).toBeLessThan(width(undefined));
  });

  it("says how many children would settle the shift within 1 % of weight", () => {
    const { childrenForOnePercent, shiftWithinPercent } = calibrate(invented({ n: 100, factor: 1, seed: 2 }));
    // (1.96 x 5.5 %)^2 is about 116 children at the fit's own spread.
    expect(childrenForOnePercent).toBeGreaterThan(60);
    expect(childrenForOnePercent).toBeLessThan(250);
    expect(shiftWithinPercent).toBeGreaterThan(0.5);
  });

  it("refuses too few rows, counting those the model cannot serve, and rows that are not of these children", () => {
    const rows = invented({ n: 25, factor: 1, seed: 4 });
    const broken = rows.map((row, i) =>
      i < 10 ? { ...row, measurements: { armMm: millimetres(150) } } : row,
    );
    expect(calibrateSite(broken)).toEqual({
      ok: false,
      error: { type: "too-few-children", children: 15, fewest: 20, leftOut: 10 },
    });
    const mixed = rows.map((row, i) => ({
      ...row,
      weightKg: (rows[(i + 7) % rows.length] as WeighedChild).weightKg,
    }));
    expect(calibrateSite(mixed)).toMatchObject({ ok: false, error: { type: "incoherent-rows" } });
  });

  it("keeps the site's own measurement errors", () => {
    const errors = { ...defaultMeasurementErrors, armSdMm: 6 };
    const result = calibrateSite(invented({ n: 50, factor: 1, seed: 8 }), { errors });
    expect(result.ok && result.value.site.errors.armSdMm).toBe(6);
  });
});

describe("the invented children", () => {
  it("are spread as the model says", () => {
    const rows = invented({ n: 2000, factor: 1, seed: 31 });
    const above = rows.filter(({ measurements, weightKg }) => {
      const own = estimateWeight(measurements);
      return own.ok && weightKg > quantileOfComponents(own.value.components, 0.5);
    }).length;
    expect(Math.abs(above / rows.length - 0.5)).toBeLessThan(0.035);
  });
});
