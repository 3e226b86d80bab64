import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centimetres, kilograms, millimetres, months } from "../units/index.ts";
import { boxCoxLogValue } from "./box-cox.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { cumulativeWeight, estimateWeight } from "./estimate-weight.ts";
import { fittedRange } from "./fitted-range.ts";
import { idealWeight } from "./ideal-weight.ts";
import type { Measurements } from "./measurements.ts";
import type { WeightEstimate } from "./weight-estimate.ts";

function estimate(measurements: Measurements): WeightEstimate {
  const result = estimateWeight(measurements);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const model = defaultBodyModel();
const lengths = fc.double({ min: 50, max: 200, noNaN: true });
/** A place between the ends of the fitted range of the arm. */
const places = fc.double({ min: 0, max: 1, noNaN: true });
const sexes = fc.constantFrom(undefined, "m" as const, "f" as const);

function armAt(lengthCm: number, place: number, sex?: "m" | "f"): number {
  const bodies = (sex === undefined ? (["m", "f"] as const) : [sex]).map((own) =>
    model.byLength.at(own, lengthCm),
  );
  const { low, high } = fittedRange({ name: "armMm", bodies });
  return low + place * (high - low);
}

function known(lengthCm: number, armMm: number, sex?: "m" | "f"): Measurements {
  return {
    lengthCm: centimetres(lengthCm),
    armMm: millimetres(armMm),
    ...(sex === undefined ? {} : { sex }),
  };
}

describe("estimateWeight()", () => {
  it("takes the trade's own example as 28 kg: length-ideal 30 kg with an arm of 190 mm (common practice)", () => {
    let lengthCm = 120;
    for (; lengthCm < 150; lengthCm += 0.1) {
      const ideal = idealWeight({ lengthCm: centimetres(lengthCm) });
      if (ideal.ok && ideal.value >= 30) break;
    }
    // The rule counts in steps; the middle of the arms it counts the same must meet it closer than its own example.
    expect(Math.abs(estimate(known(lengthCm, 186.5)).totalKg / 28 - 1)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(estimate(known(lengthCm, 190)).totalKg / 28 - 1)).toBeLessThanOrEqual(0.02);
    // "Arms of 179 to 194 mm counting the same": within the 10 % that practice calls the same.
    for (let armMm = 179; armMm <= 194; armMm++) {
      expect(Math.abs(estimate(known(lengthCm, armMm)).totalKg / 28 - 1)).toBeLessThanOrEqual(0.1);
    }
  });

  it("rises with the arm at every length", () => {
    fc.assert(
      fc.property(lengths, places, sexes, (lengthCm, place, sex) => {
        const armMm = armAt(lengthCm, place * 0.98, sex);
        const more = armMm + 2;
        expect(estimate(known(lengthCm, more, sex)).totalKg).toBeGreaterThan(
          estimate(known(lengthCm, armMm, sex)).totalKg,
        );
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  it("rises with the length for every arm", () => {
    // Up to 2.5 SD of the arm. Beyond, from 192 cm on, the curve is flat to 0.04 % per cm: half a metre of arm, of
    // which the data have two boys.
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 198, noNaN: true }),
        fc.double({ min: -3, max: 2.5, noNaN: true }),
        sexes,
        (lengthCm, z, sex) => {
          const armMm = Math.exp(boxCoxLogValue(model.byLength.at(sex ?? "m", lengthCm).curve("arm"), z));
          expect(estimate(known(lengthCm + 1, armMm, sex)).totalKg).toBeGreaterThan(
            estimate(known(lengthCm, armMm, sex)).totalKg,
          );
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });

  it("lies in its own interval, whose ends carry 2.5 % each", () => {
    fc.assert(
      fc.property(lengths, places, sexes, (lengthCm, place, sex) => {
        const own = estimate(known(lengthCm, armAt(lengthCm, place, sex), sex));
        expect(own.low95Kg).toBeLessThan(own.totalKg);
        expect(own.totalKg).toBeLessThan(own.high95Kg);
        expect(cumulativeWeight(own, own.low95Kg)).toBeCloseTo(0.025, 4);
        expect(cumulativeWeight(own, own.totalKg)).toBeCloseTo(0.5, 4);
        expect(cumulativeWeight(own, own.high95Kg)).toBeCloseTo(0.975, 4);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it("gives an unknown sex a weight between the two", () => {
    fc.assert(
      fc.property(lengths, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (lengthCm, place) => {
        const armMm = armAt(lengthCm, place);
        const [boy, girl] = [estimate(known(lengthCm, armMm, "m")), estimate(known(lengthCm, armMm, "f"))];
        const unknown = estimate(known(lengthCm, armMm)).totalKg;
        expect(unknown).toBeGreaterThanOrEqual(Math.min(boy.totalKg, girl.totalKg) * 0.9999);
        expect(unknown).toBeLessThanOrEqual(Math.max(boy.totalKg, girl.totalKg) * 1.0001);
      }),
      { seed: 9, numRuns: 200 },
    );
  });

  it("knows more with an arm than without", () => {
    for (const lengthCm of [60, 90, 120, 150, 180]) {
      const alone = estimate({ lengthCm: centimetres(lengthCm) });
      const both = estimate(known(lengthCm, armAt(lengthCm, 0.4)));
      expect(both.high95Kg - both.low95Kg).toBeLessThan(alone.high95Kg - alone.low95Kg);
      expect(alone.warnings).toContainEqual({ type: "no-girth" });
      expect(both.warnings).toEqual([]);
    }
  });

  it("never lets a number out that is not finite, whatever goes in", () => {
    const any = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(any, any, any, (lengthCm, armMm, ageMonths) => {
        const result = estimateWeight({
          lengthCm: centimetres(lengthCm),
          armMm: millimetres(armMm),
          ageMonths: months(ageMonths),
        });
        const numbers = JSON.stringify(result, (_, value: unknown) =>
          typeof value === "number" && !Number.isFinite(value) ? "not finite" : value,
        );
        expect(numbers).not.toContain("not finite");
      }),
      { seed: 10, numRuns: 2000 },
    );
  });

  it("stays finite over the whole range of arms it accepts", () => {
    fc.assert(
      fc.property(fc.double({ min: 45, max: 205, noNaN: true }), places, sexes, (lengthCm, place, sex) => {
        const bodies = (sex === undefined ? (["m", "f"] as const) : [sex]).map((own) =>
          model.byLength.at(own, lengthCm),
        );
        const { refusedLow, refusedHigh } = fittedRange({ name: "armMm", bodies });
        const own = estimate(known(lengthCm, refusedLow + place * (refusedHigh - refusedLow), sex));
        for (const kg of [own.totalKg, own.low95Kg, own.high95Kg]) {
          expect(Number.isFinite(kg) && kg > 0).toBe(true);
        }
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it("returns LengthMissing with neither length nor age, whatever else is known", () => {
    expect(estimateWeight({ armMm: millimetres(190) })).toEqual({
      ok: false,
      error: { type: "length-missing" },
    });
  });

  it("refuses a length out of range and proposes the unit that fits", () => {
    const refused = (lengthCm: number) => {
      const result = estimateWeight({ lengthCm: centimetres(lengthCm) });
      return result.ok ? undefined : result.error;
    };
    expect(refused(1.36)).toMatchObject({ low: 45, high: 205, proposal: { from: "m", value: 136 } });
    expect(refused(1360)).toMatchObject({ proposal: { from: "mm", value: 136 } });
    expect(refused(44.9)).toMatchObject({ value: 44.9, proposal: { from: "in" } });
    expect(refused(300)).not.toHaveProperty("proposal");
  });

  it("refuses an arm in centimetres and proposes millimetres", () => {
    const result = estimateWeight(known(136, 19));
    expect(result.ok ? undefined : result.error).toMatchObject({
      type: "measurement-out-of-range",
      measurement: "armMm",
      proposal: { from: "cm", value: 190 },
    });
  });

  it("warns at the edge of the data: short, tall, and an arm unlike any seen at that length", () => {
    const types = (measurements: Measurements) => estimate(measurements).warnings.map(({ type }) => type);
    expect(types(known(47, 95))).toContain("measurement-extrapolated");
    expect(types(known(203, 300))).toContain("measurement-extrapolated");
    expect(types(known(100, armAt(100, -0.05)))).toContain("measurement-extrapolated");
    expect(types(known(100, 155))).toEqual([]);
  });

  it("says what it does not use: a thigh in an infant, an earlier weight without an age now", () => {
    const { warnings, rests } = estimate({
      ...known(70, 140),
      thighCm: centimetres(25),
      earlier: { kg: kilograms(7), ageMonths: months(6) },
    });
    expect(rests).toEqual(["lengthCm", "armMm"]);
    expect(warnings).toContainEqual({ type: "measurement-not-used", measurement: "thighCm" });
    expect(warnings).toContainEqual({ type: "measurement-not-used", measurement: "earlier" });
  });

  it("takes a scale weight as it is and says when it is unlikely", () => {
    const weighed = estimate({ ...known(136, 190), scaleKg: kilograms(28.2) });
    expect(weighed).toMatchObject({
      totalKg: 28.2,
      low95Kg: 28.2,
      high95Kg: 28.2,
      rests: ["scaleKg"],
      warnings: [],
    });
    expect(cumulativeWeight(weighed, 28.1)).toBe(0);
    const pounds = estimate({ ...known(136, 190), scaleKg: kilograms(62) });
    expect(pounds.warnings).toMatchObject([{ type: "scale-weight-unlikely", scaleKg: 62 }]);
    expect(estimate({ scaleKg: kilograms(12) }).totalKg).toBe(12);
  });

  it("throws on a number that is not finite", () => {
    expect(() => estimateWeight({ lengthCm: Number.NaN as never })).toThrow(
      "lengthCm must be a finite number",
    );
  });
});
