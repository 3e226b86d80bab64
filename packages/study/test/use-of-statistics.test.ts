import { defaultBodyModel, estimateWeight, type WeighedChild } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import { measurementErrorsFromReadings } from "../src/agreement/index.ts";
import { createGenerator } from "../src/bootstrap/index.ts";
import { crossValidateCalibration, learningCurve } from "../src/calibration/index.ts";
import { testNonInferiority } from "../src/comparison/index.ts";
import { doseConsequence } from "../src/consequence/index.ts";
import { readSiteSummary } from "../src/pooling/index.ts";
import {
  childrenForNonInferiority,
  childrenForShare,
  powerByModel,
  powerForShare,
} from "../src/sample-size/index.ts";

const { normal, uniform } = createGenerator(3);

/** Invented children whose weights are the model's own, times a factor and scatter. */
function inventSite({ children, factor }: { children: number; factor: number }): WeighedChild[] {
  return Array.from({ length: children }, () => {
    const lengthCm = centimetres(70 + 70 * uniform());
    const armMm = millimetres(100 + 0.75 * lengthCm + 10 * normal());
    const estimate = estimateWeight({ lengthCm, armMm });
    if (!estimate.ok) throw new Error(estimate.error.type);
    return {
      measurements: { lengthCm, armMm },
      weightKg: factor * estimate.value.totalKg * Math.exp(0.05 * normal()),
    };
  });
}

describe("crossValidateCalibration() and learningCurve()", () => {
  const heavy = inventSite({ children: 150, factor: 1.1 });

  it("find the gain at a site whose children are 10 % heavier", () => {
    const gain = crossValidateCalibration(heavy, { seed: 4, folds: 5 });
    if (!gain.ok) throw new Error(gain.error.type);
    expect(gain.value.before.meanErrorPercent).toBeLessThan(-7);
    expect(Math.abs(gain.value.after.meanErrorPercent)).toBeLessThan(2);
    expect(gain.value.within10Gain.low).toBeGreaterThan(10);
    expect(gain.value.within10Gain.midP).toBeLessThan(0.001);
    expect(gain.value.before.children).toBe(150);
  });

  it("find none where there is none", () => {
    const gain = crossValidateCalibration(inventSite({ children: 80, factor: 1 }), { seed: 4, folds: 5 });
    expect(gain.ok && Math.abs(gain.value.within10Gain.value) < 8).toBe(true);
  });

  it("rise with the children calibrated with, and are the same for the same seed", () => {
    const curve = learningCurve(heavy, { seed: 2, sizes: [20, 60, 145], repeats: 3 });
    expect(curve.map(({ size }) => size)).toEqual([0, 20, 60]);
    expect(curve[2]?.within10Percent).toBeGreaterThan((curve[0]?.within10Percent ?? 0) + 10);
    expect(learningCurve(heavy, { seed: 2, sizes: [20, 60, 145], repeats: 3 })).toEqual(curve);
  });

  it("refuse too few", () => {
    const gain = crossValidateCalibration(heavy.slice(0, 12), { seed: 1 });
    expect(gain).toMatchObject({ ok: false, error: { type: "too-few-children" } });
  });
});

describe("doseConsequence()", () => {
  const measurements = { lengthCm: centimetres(100), armMm: millimetres(155) };
  const at = (factor: number): ReturnType<typeof doseConsequence> =>
    doseConsequence({
      children: [{ measurements, trueKg: 15, estimateKg: 15 * factor }],
      formulary: draftFormulary,
    });

  it("finds no dose outside for the true weight, more the further the estimate is off", () => {
    const outside = [1, 1.3, 2].map((factor) =>
      at(factor).doses.reduce((sum, own) => sum + own.outside.count, 0),
    );
    expect(outside[0]).toBe(0);
    expect(outside[1]).toBeGreaterThan(0);
    expect(outside[2]).toBeGreaterThan(outside[1] as number);
  });

  it("tells too much from too little", () => {
    expect(at(2).doses.every(({ below }) => below.count === 0)).toBe(true);
    expect(at(0.4).doses.every(({ above }) => above.count === 0)).toBe(true);
    expect(at(0.4).anyOutside.count).toBe(1);
  });

  it("counts sizes that change, none for the true weight", () => {
    expect(at(1).sizes.every(({ changed }) => changed.count === 0)).toBe(true);
    expect(at(2).sizes.some(({ changed }) => changed.count === 1)).toBe(true);
  });

  it("leaves out and counts what has no weight", () => {
    const none = doseConsequence({
      children: [{ measurements, trueKg: 0, estimateKg: 9 }],
      formulary: draftFormulary,
    });
    expect(none).toMatchObject({ children: 0, leftOut: 1 });
  });
});

describe("sample size", () => {
  it("is the fewest children whose power holds from there on", () => {
    const children = childrenForShare({ target: 0.7, expected: 0.8 });
    for (let more = 0; more < 100; more++)
      expect(powerForShare({ children: children + more, target: 0.7, expected: 0.8 })).toBeGreaterThanOrEqual(
        0.8,
      );
    expect(powerForShare({ children: children - 1, target: 0.7, expected: 0.8 })).toBeLessThan(0.8);
  });

  it("for non-inferiority gives the power asked for, by simulation of the test itself", () => {
    const children = childrenForNonInferiority({ discordant: 0.2, difference: 0, margin: 0.05 });
    const chance = createGenerator(8);
    let shown = 0;
    const studies = 600;
    for (let study = 0; study < studies; study++) {
      const counts = { both: 0, onlyFirst: 0, onlySecond: 0, neither: 0 };
      for (let i = 0; i < children; i++) {
        const u = chance.uniform();
        if (u < 0.1) counts.onlyFirst++;
        else if (u < 0.2) counts.onlySecond++;
        else if (u < 0.8) counts.both++;
        else counts.neither++;
      }
      const { verdict } = testNonInferiority({ counts, margin: 0.05 });
      if (verdict === "non-inferior" || verdict === "superior") shown++;
    }
    expect(Math.abs(shown / studies - 0.8)).toBeLessThan(4 * Math.sqrt(0.16 / studies));
  });

  it("by the body model agrees with the binomial power where all children are alike", () => {
    const children = [{ lengthCm: centimetres(100), armMm: millimetres(155) }];
    const simulated = powerByModel({ children, size: 120, percent: 10, target: 0.6, seed: 5, studies: 2000 });
    if (!simulated.ok) throw new Error(simulated.error.type);
    const exact = powerForShare({ children: 120, target: 0.6, expected: simulated.value.expected });
    expect(Math.abs(simulated.value.power - exact)).toBeLessThan(4 * Math.sqrt(0.25 / 2000));
  });

  it("by the body model says when it serves no child", () => {
    expect(powerByModel({ children: [{}], size: 10, percent: 10, target: 0.5, seed: 1 })).toMatchObject({
      ok: false,
      error: { type: "no-child-served", children: 1 },
    });
  });
});

describe("measurementErrorsFromReadings()", () => {
  it("widens the estimate of a site whose arms are read roughly", () => {
    const { errors, rests } = measurementErrorsFromReadings({
      armMm: [
        [150, 170],
        [160, 148],
        [171, 157],
        [140, 155],
      ],
    });
    expect(rests.map(({ of }) => of)).toEqual(["armMm"]);
    expect(errors.armSdMm).toBeGreaterThan(8);
    const child = { lengthCm: centimetres(100), armMm: millimetres(155) };
    const population = { shift: 0, slope: 0, variance: { shift: 0, slope: 0, covariance: 0 }, spread: 1 };
    const rough = estimateWeight(child, { model: defaultBodyModel(), site: { population, errors } });
    const usual = estimateWeight(child, {
      model: defaultBodyModel(),
      site: { population, errors: measurementErrorsFromReadings({}).errors },
    });
    if (!rough.ok || !usual.ok) throw new Error("no estimate");
    expect(rough.value.high95Kg - rough.value.low95Kg).toBeGreaterThan(
      usual.value.high95Kg - usual.value.low95Kg,
    );
  });
});

describe("readSiteSummary()", () => {
  const good = {
    format: "steelyard-site-summary",
    formatVersion: 1,
    site: "north",
    methods: [
      {
        method: "a",
        children: 5,
        meanErrorPercent: 1,
        sdErrorPercent: 4,
        within10: 3,
        within20: 4,
        within30: 5,
        over20: 1,
        under20: 0,
      },
    ],
  };

  it.each([
    ["not JSON", "{", { type: "not-json" }],
    [
      "a later format",
      JSON.stringify({ ...good, formatVersion: 2 }),
      { type: "newer-format", formatVersion: 2 },
    ],
    [
      "counts that do not add up",
      JSON.stringify({ ...good, methods: [{ ...good.methods[0], under20: 3 }] }),
      { type: "not-a-site-summary", at: "methods[0].over20" },
    ],
    [
      "counts out of order",
      JSON.stringify({ ...good, methods: [{ ...good.methods[0], within10: 5 }] }),
      { type: "not-a-site-summary", at: "methods[0].within10" },
    ],
    ["no site", JSON.stringify({ ...good, site: "" }), { type: "not-a-site-summary", at: "site" }],
  ])("refuses %s and says where", (_, text, error) => {
    expect(readSiteSummary(text)).toMatchObject({ ok: false, error });
  });

  it("reads a good one", () => {
    expect(readSiteSummary(JSON.stringify(good))).toEqual({ ok: true, value: good });
  });
});
