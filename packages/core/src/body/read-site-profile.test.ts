import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centimetres, millimetres } from "../units/index.ts";
import { calibrateSite } from "./calibrate-site.ts";
import { estimateWeight } from "./estimate-weight.ts";
import { readMeasurementErrors } from "./read-measurement-errors.ts";
import { readSiteProfile } from "./read-site-profile.ts";
import { writeSiteProfile } from "./write-site-profile.ts";

type Json = Record<string, unknown>;

/** An invented site whose children weigh a tenth more than the model expects. */
function profileFile(): Json {
  const rows = Array.from({ length: 60 }, (_, i) => {
    const measurements = { lengthCm: centimetres(60 + 2 * i), armMm: millimetres(115 + 2.3 * i) };
    const estimate = estimateWeight(measurements);
    if (!estimate.ok) throw new Error(`Cannot make row ${i}: ${estimate.error.type}`);
    return { measurements, weightKg: estimate.value.totalKg * (i % 2 === 0 ? 1.06 : 1.14) };
  });
  const calibration = calibrateSite(rows);
  if (!calibration.ok) throw new Error(calibration.error.type);
  const file = writeSiteProfile(calibration.value, {
    identity: { name: "Larch ward", createdOn: "2026-11-25", rowsSha256: "a".repeat(64), signed: false },
    leftOut: [{ reason: "scale weight missing", rows: 2 }],
    dates: { from: "2026-01-05", to: "2026-06-30" },
    software: "0.1.0",
  });
  return JSON.parse(JSON.stringify(file)) as Json;
}

const whole = profileFile();

/** The file with the value at a place replaced; undefined removes it. */
function changed(place: string, value: unknown): Json {
  const copy = structuredClone(whole);
  const keys = place.split(".");
  const last = keys.pop() as string;
  const holder = keys.reduce<Json>((object, key) => object[key] as Json, copy);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}

function faultsOf(value: unknown): readonly string[] {
  const read = readSiteProfile(value);
  if (read.ok) return [];
  return read.error.type === "faulty"
    ? read.error.faults.map(({ place, problem }) => `${place} ${problem.type}`)
    : [read.error.type];
}

describe("readSiteProfile()", () => {
  it("reads back what was written, and the estimate uses it", () => {
    const read = readSiteProfile(whole);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value.identity).toEqual({
      name: "Larch ward",
      createdOn: "2026-11-25",
      rowsSha256: "a".repeat(64),
      signed: false,
    });
    expect(read.value.population).toEqual(whole.population);
    expect(read.value.errors).toEqual(whole.errors);
    expect(read.value.evidence.children).toBe(60);
    const measurements = { lengthCm: centimetres(120), armMm: millimetres(184) };
    const [plain, own] = [estimateWeight(measurements), estimateWeight(measurements, { site: read.value })];
    const ratio = plain.ok && own.ok ? own.value.totalKg / plain.value.totalKg : 0;
    expect(ratio).toBeGreaterThan(1.05);
    expect(ratio).toBeLessThan(1.15);
  });

  it.each([
    [null, "unknown-format"],
    ["a text", "unknown-format"],
    [[], "unknown-format"],
    [{}, "unknown-format"],
    [changed("format", "another"), "unknown-format"],
    [changed("formatVersion", 2), "unknown-format"],
    [changed("model", "1"), "other-model"],
  ])("refuses %j", (value, type) => {
    expect(faultsOf(value)).toEqual([type]);
  });

  it.each([
    ["population", undefined, "missing"],
    ["population", 3, "not-an-object"],
    ["population.shift", undefined, "missing"],
    ["population.shift", "0.4", "not-a-number"],
    ["population.shift", null, "not-a-number"],
    ["population.shift", 12, "out-of-range"],
    ["population.slope", -9, "out-of-range"],
    ["population.spread", 0, "out-of-range"],
    ["population.variance.shift", 0, "out-of-range"],
    ["population.variance.shift", 5, "out-of-range"],
    ["population.variance.covariance", 0.4, "out-of-range"],
    ["errors.armSdMm", -1, "out-of-range"],
    ["errors.lengthSdCm.seated.onePerson", undefined, "missing"],
    ["errors.build.very-thin.z", 40, "out-of-range"],
    ["evidence.children", 7, "out-of-range"],
    ["evidence.children", 60.5, "not-a-whole-number"],
    ["evidence.rowsSha256", "abc", "not-a-sha256"],
    ["evidence.leftOut", {}, "not-a-list"],
    ["evidence.dates.to", "30 June 2026", "not-a-date"],
    ["evidence.after.coveragePercent", 101, "out-of-range"],
    ["site", " ", "not-a-text"],
    ["created", "2026-13-01", "not-a-date"],
    ["signed", "no", "not-true-or-false"],
  ])("names the place of a fault: %s = %j is %s", (place, value, type) => {
    expect(faultsOf(changed(place, value))).toEqual([`${place} ${type}`]);
  });

  it("reads back a calibration by lengths alone, whose slope stays as unknown as before", () => {
    const rows = Array.from({ length: 30 }, (_, i) => {
      const measurements = { lengthCm: centimetres(70 + 3 * i) };
      const estimate = estimateWeight(measurements);
      if (!estimate.ok) throw new Error(`Cannot make row ${i}: ${estimate.error.type}`);
      return { measurements, weightKg: estimate.value.totalKg * (i % 2 === 0 ? 1.02 : 1.08) };
    });
    const calibration = calibrateSite(rows);
    if (!calibration.ok) throw new Error(calibration.error.type);
    const identity = {
      name: "Larch ward",
      createdOn: "2026-11-25",
      rowsSha256: "a".repeat(64),
      signed: true,
    };
    const file = writeSiteProfile(calibration.value, { identity, leftOut: [], software: "0.1.0" });
    expect(readSiteProfile(JSON.parse(JSON.stringify(file))).ok).toBe(true);
  });

  it("lists every fault at once, and that of a row of a list with its number", () => {
    const copy = changed("population.shift", "x");
    (copy.evidence as Json).leftOut = [{ reason: "one", rows: 1 }, { rows: 0 }];
    expect(faultsOf(copy)).toEqual([
      "population.shift not-a-number",
      "evidence.leftOut[1].reason missing",
      "evidence.leftOut[1].rows out-of-range",
    ]);
  });

  it("never throws on any JSON, and what it accepts gives finite weights", () => {
    const places = [
      "population.shift",
      "population.slope",
      "population.spread",
      "population.variance.shift",
      "population.variance.slope",
      "population.variance.covariance",
      "errors.armSdMm",
      "errors.build.thin.zVariance",
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.oneof(fc.double({ min: -10, max: 10 }), fc.jsonValue()),
        (place, value) => {
          const read = readSiteProfile(changed(place, value === undefined ? null : value));
          if (!read.ok) return;
          const child = { lengthCm: centimetres(100), armMm: millimetres(150), build: "thin" } as const;
          const estimate = estimateWeight(child, { site: read.value });
          expect(estimate.ok && Number.isFinite(estimate.value.high95Kg)).toBe(true);
        },
      ),
      { seed: 20261125, numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(readSiteProfile(value).ok).toBe(false);
      }),
      { seed: 20261125 },
    );
  });
});

describe("readMeasurementErrors()", () => {
  it("keeps the default of what is left out", () => {
    const read = readMeasurementErrors({ lengthSdCm: { seated: { onePerson: 1.2 } } });
    expect(read.ok && read.value.lengthSdCm.seated).toEqual({ onePerson: 1.2, twoPeople: 2.5 });
    expect(read.ok && read.value.armSdMm).toBe(3.15);
  });

  it("lists every fault with its place", () => {
    const read = readMeasurementErrors({ armSdMm: "2", lengthSdCm: { lying: { twoPeople: 90 } }, build: 1 });
    expect(read.ok ? [] : read.error.map(({ place }) => place)).toEqual([
      "build",
      "lengthSdCm.lying.twoPeople",
      "armSdMm",
    ]);
  });
});
