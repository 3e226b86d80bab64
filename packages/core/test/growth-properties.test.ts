import {
  heightAge,
  heightToLength,
  lengthToHeight,
  median,
  statureForTables,
  valueAtZ,
  whoBmiForAge,
  whoHeightForAge,
  whoWeightForAge,
  zScore,
} from "@steelyard/core/growth";
import { centimetres, days, months } from "@steelyard/core/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { growthStandards } from "./growth-standards.ts";

const run = { seed: 20261125, numRuns: 300 } as const;
const names = [...growthStandards.keys()];
const sexes = ["m", "f"] as const;
const anySex = fc.constantFrom(...sexes);
const fraction = fc.double({ min: 0, max: 1, noNaN: true });

function place(name: string, share: number) {
  const standard = growthStandards.get(name);
  if (!standard) throw new Error(name);
  const { low, high } = standard.index;
  return { standard, at: low + share * (high - low) };
}

describe.each(names)("%s", (name) => {
  it("gives back the z-score of the value at a z", () => {
    const z = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(anySex, fraction, z, (sex, share, given) => {
        const { standard, at } = place(name, share);
        const value = valueAtZ({ standard, sex, at, z: given });
        if (!value.ok || value.value < 0.01 || value.value > 1000) return;
        const back = zScore({ standard, sex, at, value: value.value });
        expect(back.ok && back.value).toBeCloseTo(given, 6);
      }),
      run,
    );
  });

  it("rises with the value, and with z", () => {
    fc.assert(
      fc.property(anySex, fraction, fraction, (sex, share, up) => {
        const { standard, at } = place(name, share);
        const { m } = standard.lms({ sex, at });
        const value = m * (0.3 + 2 * up);
        const lower = zScore({ standard, sex, at, value });
        const higher = zScore({ standard, sex, at, value: value * 1.01 });
        expect(lower.ok && higher.ok && higher.value > lower.value).toBe(true);
        const middle = valueAtZ({ standard, sex, at, z: 0 });
        expect(middle).toEqual(median({ standard, sex, at }));
      }),
      run,
    );
  });

  it("gives a finite number or an issue, whatever finite numbers come in", () => {
    const any = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.double({ min: 0, max: 300, noNaN: true }),
    );
    fc.assert(
      fc.property(anySex, any, any, fraction, (sex, at, number, share) => {
        const { standard, at: inside } = place(name, share);
        for (const where of [at, inside]) {
          const answers = [
            zScore({ standard, sex, at: where, value: number }),
            valueAtZ({ standard, sex, at: where, z: number }),
            median({ standard, sex, at: where }),
          ];
          for (const answer of answers) {
            if (answer.ok) expect(Number.isFinite(answer.value)).toBe(true);
            else expect(Number.isFinite(answer.error.low) && Number.isFinite(answer.error.high)).toBe(true);
          }
        }
      }),
      run,
    );
  });

  it("names the range and the value when the index is out of it, and throws on NaN", () => {
    const { standard } = place(name, 0);
    const { low, high, name: index, unit } = standard.index;
    for (const at of [low - 0.1, high + 0.1]) {
      const issue = {
        type: "index-out-of-range",
        standardId: standard.id,
        index,
        unit,
        value: at,
        low,
        high,
      };
      expect(median({ standard, sex: "f", at })).toEqual({ ok: false, error: issue });
      expect(zScore({ standard, sex: "f", at, value: 10 })).toEqual({ ok: false, error: issue });
      expect(valueAtZ({ standard, sex: "f", at, z: 0 })).toEqual({ ok: false, error: issue });
      expect(() => standard.lms({ sex: "f", at })).toThrow(RangeError);
    }
    expect(() => zScore({ standard, sex: "m", at: low, value: Number.NaN })).toThrow(
      "Cannot compute a z-score as value must be a finite number: current value is NaN",
    );
    expect(() => valueAtZ({ standard, sex: "m", at: Number.NaN, z: 0 })).toThrow(RangeError);
    expect(() => median({ standard, sex: "x" as "m", at: low })).toThrow(RangeError);
  });

  it("says where it comes from", () => {
    const { standard } = place(name, 0);
    expect(standard.sourceIds.length).toBeGreaterThan(0);
    expect(standard.acknowledgement).toMatch(/World Health Organization|Centers for Disease Control|Mramba/);
    expect(standard.value.unit).toMatch(/^(kg|cm|kg\/m2)$/);
  });
});

describe("joined WHO standards", () => {
  // Length turns into height at 731 days: 0.7 cm, and 0.7 cm worth of index.
  const steps = { whoHeightForAge: 0.75, whoBmiForAge: 0.3, whoWeightForAge: 0 } as const;
  it.each([
    { name: "whoHeightForAge", standard: whoHeightForAge } as const,
    { name: "whoBmiForAge", standard: whoBmiForAge } as const,
    { name: "whoWeightForAge", standard: whoWeightForAge } as const,
  ])("$name has no step from 2006 to 2007", ({ name, standard }) => {
    for (const sex of sexes) {
      let previous = standard.lms({ sex, at: months(0) });
      for (let day = 0.25; day / 30.4375 <= standard.index.high; day += 0.25) {
        const next = standard.lms({ sex, at: months(day / 30.4375) });
        const room = day > 729 && day < 732 ? steps[name] : 0;
        expect(Math.abs(next.m - previous.m), `day ${day}`).toBeLessThan(0.003 * next.m + room);
        expect(Math.abs(next.l - previous.l), `day ${day}`).toBeLessThan(0.05);
        previous = next;
      }
    }
  });
});

describe("statureForTables()", () => {
  it("goes by age where it is known, half a day up, else by stance, else by 87 cm", () => {
    const cm = centimetres(88);
    const kindAt = (age: number) => statureForTables({ cm, ageDays: days(age) }).kind;
    expect([0, 730, 730.49, 730.5, 731, 6000].map(kindAt)).toEqual([
      "length",
      "length",
      "length",
      "height",
      "height",
      "height",
    ]);
    expect(statureForTables({ cm, stance: "lying" })).toEqual({ kind: "length", cm: 88 });
    expect(statureForTables({ cm: centimetres(60), stance: "standing" })).toEqual({ kind: "height", cm: 60 });
    expect([86.99, 87].map((each) => statureForTables({ cm: centimetres(each) }).kind)).toEqual([
      "length",
      "height",
    ]);
  });

  it("throws on NaN, on a stature of 0 and on an age before birth", () => {
    expect(() => statureForTables({ cm: Number.NaN as never })).toThrow(RangeError);
    expect(() => statureForTables({ cm: centimetres(0) })).toThrow(RangeError);
    expect(() => statureForTables({ cm: centimetres(60), ageDays: days(-1) })).toThrow(RangeError);
  });

  it("turns length into height and back to the tenth of a millimetre", () => {
    for (let tenths = 4500; tenths <= 20500; tenths++) {
      const cm = centimetres(tenths / 100);
      expect(heightToLength(lengthToHeight(cm))).toBe(cm);
    }
  });
});

describe("heightAge()", () => {
  it("rises with every millimetre and meets the median again", () => {
    for (const sex of [undefined, ...sexes]) {
      let previous = -1;
      for (let mm = 500; mm <= 1638; mm++) {
        const found = heightAge({ lengthCm: centimetres(mm / 10), ...(sex && { sex }) });
        expect(found.ok && found.value > previous, `${sex} ${mm} mm`).toBe(true);
        if (!found.ok) continue;
        previous = found.value;
        if (!sex || found.value < 25) continue;
        const back = median({ standard: whoHeightForAge, sex, at: found.value });
        expect(back.ok && heightToLength(back.value)).toBeCloseTo(mm / 10, 2);
      }
    }
  });

  it("refuses a length outside birth to 19 years and names the range", () => {
    expect(heightAge({ lengthCm: centimetres(178), sex: "m" })).toEqual({
      ok: false,
      error: { type: "length-out-of-range", lengthCm: 178, low: 49.8842, high: 177.2432 },
    });
    expect(heightAge({ lengthCm: centimetres(49), sex: "f" }).ok).toBe(false);
    expect(() => heightAge({ lengthCm: Number.NaN as never })).toThrow(RangeError);
  });
});
