import { computeSheet, type DoseLine, type SettlingMeasurement } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { describeDosingWarning } from "@steelyard/core/wording";
import { describe, expect, it } from "vitest";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;
const formulary = oneUseFormulary({
  rule: {
    kind: "per-kg",
    amountPerKg: 1,
    unit: "mg",
    basis: "total",
    accepted: { lowPerKg: 0.8, highPerKg: 1.2, citations },
  },
  strengths: [strengthOf(1, "mg")],
});

/** A weight of 10 kg that may well be a fifth off. */
function lineWith(settles?: readonly SettlingMeasurement[], spread = 0.15): DoseLine {
  const cumulative = (kg: number): number => 1 / (1 + Math.exp(-(kg / 10 - 1) / (spread / 1.7)));
  const weights = { totalKg: kilograms(10), cumulative };
  const [line] = computeSheet({ formulary, weights, ...(settles && { settles }) });
  if (line === undefined || line.unavailable) throw new Error("no dose");
  return line;
}

const arm = { measurement: "armMm", halfWidthPercent: 22 };
const waist = { measurement: "waistCm", halfWidthPercent: 9 };
const thigh = { measurement: "thighCm", halfWidthPercent: 5 };

/** P(ln W outside the accepted range) by Simpson's rule on the normal density. */
function outside(halfWidthPercent: number): number {
  const sd = Math.log(1 + halfWidthPercent / 100) / 1.959963985;
  const [low, high] = [Math.log(1 / 1.2) / sd, Math.log(1 / 0.8) / sd];
  const steps = 20_000;
  const width = (high - low) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) {
    const z = low + i * width;
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp((-z * z) / 2);
  }
  return 1 - (sum * width) / 3 / Math.sqrt(2 * Math.PI);
}

describe("what settles a dose in doubt", () => {
  it("is the first measurement of the list that brings the probability to 5 % or less", () => {
    const { robustness, warnings } = lineWith([arm, waist, thigh]);
    expect(robustness?.probabilityOutside).toBeGreaterThan(0.05);
    expect(robustness?.settledBy?.measurement).toBe("waistCm");
    expect(robustness?.settledBy?.probabilityOutside).toBeCloseTo(outside(9), 6);
    expect(outside(22)).toBeGreaterThan(0.05);
    const [sentence] = warnings.map((warning) => describeDosingWarning(warning).replaceAll("\u00a0", " "));
    expect(sentence).toMatch(/Measure the waist circumference: that would leave under 1 %\.$/);
  });

  it("is nothing where no measurement would do", () => {
    const { robustness } = lineWith([arm]);
    expect(robustness).not.toHaveProperty("settledBy");
    expect(lineWith().robustness).not.toHaveProperty("settledBy");
  });

  it("is not asked for where the dose is safe as it is", () => {
    const { robustness, warnings } = lineWith([waist], 0.03);
    expect(robustness?.probabilityOutside).toBeLessThan(0.05);
    expect(robustness).not.toHaveProperty("settledBy");
    expect(warnings).toEqual([]);
  });

  it("needs a width that makes sense", () => {
    expect(() => lineWith([{ measurement: "waistCm", halfWidthPercent: 0 }])).toThrow(RangeError);
    expect(() => lineWith([{ measurement: "waistCm", halfWidthPercent: Number.NaN }])).toThrow(RangeError);
  });
});
