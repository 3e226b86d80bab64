import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centimetres } from "../units/index.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { estimateWeight } from "./estimate-weight.ts";
import type { Measurements } from "./measurements.ts";
import { recogniseSlips } from "./recognise-slips.ts";
import type { Slip, SlipName } from "./slip.ts";

/** Plain numbers as measurements: the units are in the names. */
const measured = (numbers: object): Measurements => numbers as Measurements;

/** What is proposed first, in short. */
function told(slips: readonly Slip[]): string {
  const [slip] = slips;
  if (slip === undefined) return "nothing";
  const from = slip.type === "unit" ? ` ${slip.from}` : "";
  return `${slip.type}${from}: ${slip.changes.map(({ measurement, value }) => `${measurement} ${value}`).join(", ")}`;
}

/** A girl of 9 years near the median of NHANES for her length; her length and arm are the README's example. */
const girl = { lengthCm: 136, armMm: 190, waistCm: 58, ageMonths: 108, scaleKg: 28, sex: "f" } as const;

describe("recogniseSlips() proposes", () => {
  // Inch 25.4 mm, foot 12 in and pound 0.45359237 kg are exact (NIST Handbook 44, Appendix C); the rest is a decimal point or an exchange.
  it.each([
    ["an arm in cm", { armMm: 19 }, "unit cm: armMm 190"],
    ["an arm in inches", { armMm: 7.5 }, "unit in: armMm 190.5"],
    ["an arm in metres", { armMm: 0.19 }, "unit m: armMm 190"],
    ["an arm with a nought too many", { armMm: 1900 }, "decimal-point: armMm 190"],
    ["a length in metres", { lengthCm: 1.36 }, "unit m: lengthCm 136"],
    ["a length in mm", { lengthCm: 1360 }, "unit mm: lengthCm 136"],
    ["a length in inches", { lengthCm: 53.5 }, "unit in: lengthCm 135.89"],
    ["a length in feet", { lengthCm: 4.5 }, "unit ft: lengthCm 137.16"],
    ["a length without its point's place", { lengthCm: 13.6 }, "decimal-point: lengthCm 136"],
    ["a waist in inches", { waistCm: 23 }, "unit in: waistCm 58.42"],
    ["a waist in mm", { waistCm: 580 }, "unit mm: waistCm 58"],
    ["a weight in pounds", { scaleKg: 61.7 }, "unit lb: scaleKg 27.986649229"],
    ["a weight in grams", { scaleKg: 28_000 }, "unit g: scaleKg 28"],
    ["a weight of a tenth", { scaleKg: 2.8 }, "decimal-point: scaleKg 28"],
    ["an age in years", { ageMonths: 9 }, "unit y: ageMonths 108"],
    ["length and arm exchanged", { lengthCm: 190, armMm: 136 }, "fields-exchanged: lengthCm 136, armMm 190"],
    ["waist and arm exchanged", { waistCm: 190, armMm: 58 }, "fields-exchanged: armMm 190, waistCm 58"],
    [
      "length and weight exchanged",
      { lengthCm: 28, scaleKg: 136 },
      "fields-exchanged: lengthCm 136, scaleKg 28",
    ],
    ["digits of the length exchanged", { lengthCm: 163 }, "digits-exchanged: lengthCm 136"],
    ["an arm that nothing explains", { armMm: 318 }, "outlier: armMm undefined"],
  ])("%s", (_, slip, expected) => {
    expect(told(recogniseSlips(measured({ ...girl, ...slip })))).toBe(expected);
  });

  it.each([
    ["a length in metres and nothing else", { lengthCm: 1.36 }, "unit m: lengthCm 136"],
    ["an arm in cm and nothing else", { armMm: 19 }, "unit cm: armMm 190"],
    ["an infant's age in years", { lengthCm: 75, armMm: 145, ageMonths: 132 }, "unit mo: ageMonths 11"],
    ["a tape in inches", { lengthCm: 53.5, armMm: 7.5 }, "unit in: lengthCm 135.89, armMm 190.5"],
    [
      "a tape in inches, beside a weight",
      { lengthCm: 53.5, armMm: 7.5, waistCm: 23, scaleKg: 28 },
      "unit in: lengthCm 135.89, armMm 190.5, waistCm 58.42",
    ],
    ["a carer's pounds", { lengthCm: 136, armMm: 190, carerKg: 62 }, "unit lb: carerKg 28.12272694"],
    ["a head in mm", { lengthCm: 66, armMm: 140, headCm: 430 }, "unit mm: headCm 43"],
    [
      "length and arm exchanged, without more",
      { lengthCm: 190, armMm: 136 },
      "fields-exchanged: lengthCm 136, armMm 190",
    ],
  ])("%s", (_, given, expected) => {
    expect(told(recogniseSlips(measured(given)))).toBe(expected);
  });

  it("all measurements with the slip mended, and leaves those given alone", () => {
    const given = measured({ ...girl, armMm: 19, posture: "seated" });
    const before = structuredClone(given);
    expect(recogniseSlips(given)[0]?.proposed).toEqual({ ...girl, posture: "seated" });
    expect(given).toEqual(before);
  });

  it("a correction before leaving a number out", () => {
    const types = recogniseSlips(measured({ ...girl, armMm: 19 })).map(({ type }) => type);
    expect(types[0]).toBe("unit");
    expect(types.slice(0, -1)).not.toContain("outlier");
  });
});

describe("recogniseSlips() says nothing", () => {
  it.each([
    ["of the girl", girl],
    ["of nothing", {}],
    ["of a length alone", { lengthCm: 136 }],
    // The smallest arm for its length among 58,000 children of the open surveys is 1.01 mm per cm (entry/human-limits.ts).
    ["of a starved child", { lengthCm: 85, armMm: 95, sex: "m" }],
    // WHO child growth standards 2006: girls' length at birth, median less 2 SD, is 45.4 cm.
    ["of a newborn", { lengthCm: 49, ageMonths: 0, scaleKg: 3.2 }],
    ["of a very obese child", { lengthCm: 136, armMm: 300, waistCm: 95, scaleKg: 62 }],
    ["of an arm with oedema", { lengthCm: 85, armMm: 260, oedema: true }],
    ["of a waist in pregnancy", { lengthCm: 165, armMm: 260, waistCm: 110, scaleKg: 75, pregnant: true }],
  ])("%s", (_, given) => {
    expect(told(recogniseSlips(measured(given)))).toBe("nothing");
  });
});

describe("recogniseSlips()", () => {
  it("keeps what oedema leaves unjudged in its proposal", () => {
    const given = measured({ lengthCm: 1.36, armMm: 190, ageMonths: 108, oedema: true });
    expect(recogniseSlips(given)[0]?.proposed).toEqual({ ...given, lengthCm: 136 });
  });

  it("says more the lower its threshold", () => {
    const doubtful = measured({ lengthCm: 162, armMm: 127 });
    expect(recogniseSlips(doubtful)).toEqual([]);
    expect(told(recogniseSlips(doubtful, { alarmAt: 0 }))).toBe("fields-exchanged: lengthCm 127, armMm 162");
  });

  it("throws on what is no number and no probability", () => {
    expect(() => recogniseSlips(measured({ armMm: Number.NaN }))).toThrow(
      "Cannot recognise slips as armMm must be a finite number: current value is NaN",
    );
    expect(() => recogniseSlips({}, { alarmAt: 1.5 })).toThrow(RangeError);
  });

  const anyNumber = fc.oneof(
    fc.double({ min: 0.1, max: 400, noNaN: true }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  );
  const names: readonly SlipName[] = [
    "lengthCm",
    "armMm",
    "waistCm",
    "thighCm",
    "calfCm",
    "headCm",
    "ageMonths",
    "carerKg",
    "scaleKg",
  ];
  const anything = fc.record(
    {
      ...Object.fromEntries(names.map((name) => [name, anyNumber])),
      sex: fc.constantFrom("m", "f"),
      build: fc.constantFrom("very-thin", "average", "very-heavy"),
      armReadings: fc.integer({ min: 1, max: 9 }),
      oedema: fc.boolean(),
      missingLimb: fc.constantFrom("arm", "leg"),
    },
    { requiredKeys: [] },
  );

  it("never throws on finite numbers; each proposal changes what it says and nothing else, and p are shares", () => {
    fc.assert(
      fc.property(anything, (given) => {
        const slips = recogniseSlips(measured(given));
        expect(slips.reduce((sum, { p }) => sum + p, 0)).toBeLessThanOrEqual(1 + 1e-9);
        for (const { changes, proposed, p } of slips) {
          expect(p).toBeGreaterThan(0);
          const after: Record<string, unknown> = { ...given };
          for (const { measurement, given: was, value } of changes) {
            expect(was).toBe((given as Measurements)[measurement]);
            if (value === undefined) delete after[measurement];
            else after[measurement] = value;
            expect(Number.isFinite(value ?? 0)).toBe(true);
          }
          expect(proposed).toEqual(after);
        }
      }),
      { seed: 20261125, numRuns: 400 },
    );
  });

  it("finds its own proposals coherent, and the model serves them, where a length and an arm had one slip", () => {
    const at = defaultBodyModel().byLength;
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 185 }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.constantFrom(0.1, 1 / 25.4, 10, 0.001),
        (lengthCm, lean, factor) => {
          const armMm = Math.exp(at.at("f", lengthCm).curve("arm").logMedian + lean);
          const [slip] = recogniseSlips(measured({ lengthCm, armMm: armMm * factor }));
          expect(slip?.proposed.armMm).toBeCloseTo(armMm, 6);
          expect(recogniseSlips(slip?.proposed ?? {})).toEqual([]);
          expect(estimateWeight(slip?.proposed ?? {}).ok).toBe(true);
        },
      ),
      { seed: 20261125, numRuns: 100 },
    );
  });

  it("takes an earlier weight and readings in its stride", () => {
    const given = measured({ ...girl, armMm: 19, armReadings: 3, earlier: { kg: 25, ageMonths: 96 } });
    expect(told(recogniseSlips(given))).toBe("unit cm: armMm 190");
    expect(recogniseSlips({ lengthCm: centimetres(-5) })[0]?.type).toBe("outlier");
  });
});
