import { describe, expect, it } from "vitest";
import { readMeasurements } from "./read-measurements.ts";

describe("readMeasurements()", () => {
  it("takes any subset and leaves out what is absent or blank", () => {
    expect(readMeasurements({ lengthCm: "136", armMm: " ", sex: undefined, carerKg: "" })).toEqual({
      ok: true,
      value: { measurements: { lengthCm: 136 }, notices: [] },
    });
    expect(readMeasurements({})).toEqual({ ok: true, value: { measurements: {}, notices: [] } });
  });

  it("returns every issue at once", () => {
    const read = readMeasurements({ lengthCm: "abc", armMm: "19", ageMonths: "9" });
    expect(!read.ok && read.error.map(({ field, type }) => `${field} ${type}`)).toEqual([
      "lengthCm not-a-number",
      "armMm out-of-limits",
      "ageMonths unit-missing",
    ]);
  });

  // CV026 of the fact list: 18-month-old measured standing 80.0 cm -> length 80.7 cm (WHO anthro, rule of + 0.7 cm).
  it("takes standing height as a lying length 0.7 cm longer", () => {
    expect(readMeasurements({ standingHeightCm: "80.0" })).toEqual({
      ok: true,
      value: {
        measurements: { lengthCm: 80.7 },
        notices: [{ type: "length-from-height", standingHeightCm: 80, lengthCm: 80.7 }],
      },
    });
  });

  it("uses the lying length of two, with a notice only when they disagree by more than 2 cm", () => {
    expect(readMeasurements({ lengthCm: "82.7", standingHeightCm: "80" })).toEqual({
      ok: true,
      value: { measurements: { lengthCm: 82.7 }, notices: [] },
    });
    expect(readMeasurements({ lengthCm: "84", standingHeightCm: "80" })).toMatchObject({
      value: {
        measurements: { lengthCm: 84 },
        notices: [{ type: "lengths-disagree", differenceCm: 3.3 }],
      },
    });
  });

  it("joins an earlier weight with the age then, and says so when one of the two is missing", () => {
    const together = readMeasurements({ earlierKg: "25", earlierAgeMonths: "8y", lengthCm: "136" });
    expect(together).toEqual({
      ok: true,
      value: { measurements: { lengthCm: 136, earlier: { kg: 25, ageMonths: 96 } }, notices: [] },
    });
    expect(readMeasurements({ lengthCm: "136", earlierKg: "25" })).toEqual({
      ok: true,
      value: {
        measurements: { lengthCm: 136 },
        notices: [{ type: "earlier-incomplete", field: "earlierKg", missing: "earlierAgeMonths" }],
      },
    });
    expect(readMeasurements({ standingHeightCm: "135.3", earlierAgeMonths: "8y" })).toMatchObject({
      value: {
        measurements: { lengthCm: 136 },
        notices: [{ type: "length-from-height" }, { type: "earlier-incomplete", missing: "earlierKg" }],
      },
    });
  });

  it("takes how the measuring was done, and what changes the body", () => {
    const texts = { people: "2", lengthReadings: "3", armStepMm: "5", missingLimb: "foot", oedema: "yes" };
    expect(readMeasurements({ lengthCm: "136", ...texts })).toMatchObject({
      value: {
        measurements: { people: 2, lengthReadings: 3, armStepMm: 5, missingLimb: "foot", oedema: true },
      },
    });
  });

  it("proposes to exchange length and arm where only that makes sense", () => {
    expect(readMeasurements({ lengthCm: "190", armMm: "136" })).toEqual({
      ok: false,
      error: [
        {
          type: "fields-swapped",
          field: "armMm",
          lengthCm: 190,
          armMm: 136,
          proposals: [{ type: "swap", lengthCm: 136, armMm: 190 }],
        },
      ],
    });
    expect(readMeasurements({ lengthCm: "136", armMm: "190" }).ok).toBe(true);
    expect(readMeasurements({ lengthCm: "82.8", armMm: "80" }).ok, "a severely wasted child").toBe(true);
  });
});
