import { type Formulary, type GivenRecord, trackGivenDoses } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { describeTrackingWarning } from "@steelyard/core/wording";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

const citations = [{ sourceId: "common-practice", verification: "common practice" }] as const;

function formularyWith(cumulative: object, extra: object = {}): Formulary {
  return oneUseFormulary({
    rule: {
      kind: "per-kg",
      amountPerKg: 0.1,
      unit: "mg",
      basis: "total",
      maximum: { amount: 4, unit: "mg" },
    },
    strengths: [strengthOf(1, "mg")],
    use: {
      repeat: {
        maximumDoses: 3,
        intervalMin: { low: 5, high: 10 },
        cumulativeMaximum: cumulative,
        text: "repeat",
        citations,
        ...extra,
      },
    },
  });
}

const mg = (amount: number, atMinutes: number, lineId = "test.use"): GivenRecord => ({
  lineId,
  dose: { amount, unit: "mg" },
  atMinutes,
});
const weights = { totalKg: kilograms(20) };
const perKg = { perKg: { amount: 0.3, unit: "mg" } };

describe("trackGivenDoses()", () => {
  it("sums exactly and says what is left", () => {
    const given = [mg(0.1, 0), { ...mg(1, 6), dose: { amount: 200, unit: "microgram" } as const }];
    const { lines, warnings } = trackGivenDoses({ formulary: formularyWith(perKg), weights, given });
    expect(warnings).toEqual([]);
    expect(lines).toEqual([
      {
        lineId: "test.use",
        medicine: "test",
        use: "use",
        doses: 2,
        total: { amount: 0.3, unit: "mg" },
        totalOfMedicine: { amount: 0.3, unit: "mg" },
        maximum: { dose: { amount: 6, unit: "mg" } },
        remaining: { amount: 5.7, unit: "mg" },
        dosesLeft: 1,
        nextDue: { earliestMinutes: 11, latestMinutes: 16 },
      },
    ]);
  });

  it("takes the smaller of the maximum per kg and the flat one", () => {
    const total = { total: { amount: 5, unit: "mg" } };
    const maximum = (cumulative: object) =>
      trackGivenDoses({ formulary: formularyWith(cumulative), weights, given: [mg(1, 0)] }).lines[0]?.maximum
        ?.dose.amount;
    expect(maximum({ ...perKg, ...total })).toBe(5);
    expect(maximum({ ...perKg, total: { amount: 9000, unit: "microgram" } })).toBe(6);
    expect(maximum(total)).toBe(5);
  });

  it("takes the maximum of the band of weight", () => {
    const mgOf = (amount: number) => ({ amount, unit: "mg" }) as const;
    const formulary = formularyWith({
      byWeight: [
        { lowKg: 0, highKg: 10, perKg: mgOf(0.3) },
        { lowKg: 10, perKg: mgOf(0.6), total: mgOf(9) },
      ],
    });
    const maximum = (kg: number) =>
      trackGivenDoses({ formulary, weights: { totalKg: kilograms(kg) }, given: [mg(1, 0)] }).lines[0]?.maximum
        ?.dose.amount;
    expect([maximum(9), maximum(10), maximum(20)]).toEqual([2.7, 6, 9]);
  });

  it("marks the dose that passes the maximum, not the one that meets it", () => {
    const given = [mg(2, 0), mg(2, 10), mg(2, 20), mg(0.001, 30)];
    const { lines, warnings } = trackGivenDoses({
      formulary: formularyWith(perKg, { maximumDoses: 9 }),
      weights,
      given,
    });
    expect(warnings).toEqual([
      {
        type: "cumulative-maximum-passed",
        lineId: "test.use",
        atMinutes: 30,
        total: { amount: 6.001, unit: "mg" },
        maximum: { amount: 6, unit: "mg" },
      },
    ]);
    expect(lines[0]?.remaining?.amount).toBe(0);
    expect(lines[0]?.nextDue).toBeUndefined();
  });

  it("counts only the hours that the maximum is for", () => {
    const formulary = formularyWith({ ...perKg, withinH: 24 }, { maximumDoses: 9 });
    const at = (atMinutes: number) =>
      trackGivenDoses({ formulary, weights, given: [mg(4, 0), mg(4, atMinutes)] }).warnings.map(
        ({ type }) => type,
      );
    expect(at(24 * 60 - 1)).toEqual(["cumulative-maximum-passed"]);
    expect(at(24 * 60)).toEqual([]);
  });

  it("counts the number of doses over the same hours", () => {
    const formulary = formularyWith(
      { ...perKg, withinH: 24 },
      { maximumDoses: 2, intervalMin: { low: 1, high: 1 } },
    );
    const track = (last: number) =>
      trackGivenDoses({ formulary, weights, given: [mg(1, 0), mg(1, 600), mg(1, last)] });
    expect(track(1439).warnings.map(({ type }) => type)).toEqual(["too-many-doses"]);
    expect(track(1440).warnings).toEqual([]);
    expect(track(1440).lines[0]?.dosesLeft).toBe(0);
    expect(track(2100).lines[0]?.dosesLeft).toBe(1);
  });

  it("waits with the next dose until the hours that count have room again", () => {
    const formulary = formularyWith({ ...perKg, withinH: 24 }, { maximumDoses: 9 });
    const due = (given: readonly GivenRecord[], of: Formulary = formulary) =>
      trackGivenDoses({ formulary: of, weights, given }).lines[0]?.nextDue;
    // 6 mg in 24 h: the 2 mg of -60 leave at 1,380, before that nothing is left.
    expect(due([mg(2, -60), mg(4, 600)])).toEqual({ earliestMinutes: 1380, latestMinutes: 1380 });
    // With 7 mg counted, the first to leave does not make room, the second does.
    expect(due([mg(1, -60), mg(3, 0), mg(3, 600)])).toEqual({ earliestMinutes: 1440, latestMinutes: 1440 });
    // Room before the interval is over: the interval holds.
    expect(due([mg(2, 0), mg(4, 1437)])).toEqual({ earliestMinutes: 1442, latestMinutes: 1447 });
    // By number of doses.
    const twice = formularyWith({ ...perKg, withinH: 24 }, { maximumDoses: 2 });
    expect(due([mg(1, 0), mg(1, 600)], twice)).toEqual({ earliestMinutes: 1440, latestMinutes: 1440 });
    // Some of it left: the interval alone, whatever the clock counts from.
    expect(due([mg(1, -60)])).toEqual({ earliestMinutes: -55, latestMinutes: -50 });
  });

  it("marks doses too many, too soon and too large, in any order of entry", () => {
    const given = [mg(1, 20), mg(1, 0), mg(4.1, 4), mg(0.1, 30)];
    const { warnings } = trackGivenDoses({ formulary: formularyWith({}), weights, given });
    expect(warnings.map(({ type, ...rest }) => [type, "atMinutes" in rest && rest.atMinutes])).toEqual([
      ["single-maximum-passed", 4],
      ["too-soon", 4],
      ["too-many-doses", 30],
    ]);
  });

  it("says what it cannot count", () => {
    const given = [mg(1, 0, "gone.use"), { ...mg(1, 1), dose: { amount: 2, unit: "mL" } as const }];
    const { lines, warnings } = trackGivenDoses({ formulary: formularyWith({}), weights, given });
    expect(lines).toEqual([]);
    expect(warnings.map(({ type }) => type)).toEqual(["unknown-line", "unit-not-comparable"]);
  });

  it("counts a dose of a use that the formulary has no more in the totals of its medicine", () => {
    const [medicine] = formularyWith(perKg).medicines;
    const given = [mg(1, 0), mg(2, 1, `${medicine?.id}.gone`), mg(3, 2, "another.gone")];
    const { lines, warnings } = trackGivenDoses({ formulary: formularyWith(perKg), weights, given });
    expect(lines.map(({ total, totalOfMedicine }) => [total.amount, totalOfMedicine.amount])).toEqual([
      [1, 3],
    ]);
    expect(warnings.map(({ type }) => type)).toEqual(["unknown-line", "unknown-line"]);

    const inMl = { ...mg(1, 3, `${medicine?.id}.gone`), dose: { amount: 5, unit: "mL" } as const };
    const uncounted = trackGivenDoses({ formulary: formularyWith(perKg), weights, given: [mg(1, 0), inMl] });
    expect(uncounted.lines.map(({ totalOfMedicine }) => totalOfMedicine.amount)).toEqual([1]);
    expect(uncounted.warnings.map(({ type }) => type)).toEqual(["unknown-line", "unit-not-comparable"]);
  });

  it("counts the other uses of the same medicine", () => {
    const [medicine] = formularyWith(perKg).medicines;
    const [use] = medicine?.uses ?? [];
    if (medicine === undefined || use === undefined) throw new Error("no use");
    const formulary = {
      ...formularyWith(perKg),
      medicines: [{ ...medicine, uses: [use, { ...use, id: "other" }] }],
    };
    const { lines } = trackGivenDoses({ formulary, weights, given: [mg(1, 0), mg(2, 5, "test.other")] });
    expect(lines.map(({ remaining }) => remaining?.amount)).toEqual([3, 3]);
  });

  it("says that a maximum by an unknown weight could not be checked", () => {
    const formulary = oneUseFormulary({
      rule: { kind: "per-kg", amountPerKg: 1, unit: "mg", basis: "ideal" },
      use: { repeat: { cumulativeMaximum: { perKg: { amount: 2, unit: "mg" } }, text: "again", citations } },
    });
    const { warnings } = trackGivenDoses({ formulary, weights, given: [mg(1, 0)] });
    expect(warnings).toEqual([{ type: "maximum-not-known", lineId: "test.use" }]);
  });

  it("refuses what is no dose and no time", () => {
    const track = (record: GivenRecord) => () =>
      trackGivenDoses({ formulary: formularyWith({}), weights, given: [record] });
    expect(track(mg(0, 0))).toThrow(RangeError);
    expect(track(mg(Number.NaN, 0))).toThrow(RangeError);
    expect(track(mg(1, Number.POSITIVE_INFINITY))).toThrow(RangeError);
  });

  it("never leaves less than nothing, whatever was given; total and rest make the maximum", () => {
    const doses = fc.array(
      fc.record({ tenths: fc.integer({ min: 1, max: 60 }), at: fc.integer({ min: 0, max: 500 }) }),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(doses, (list) => {
        const given = list.map(({ tenths, at }) => mg(tenths / 10, at));
        const { lines, warnings } = trackGivenDoses({ formulary: formularyWith(perKg), weights, given });
        const sum = list.reduce((total, { tenths }) => total + tenths, 0);
        expect(lines[0]?.total.amount).toBe(sum / 10);
        expect(lines[0]?.remaining?.amount).toBe(Math.max(0, 60 - sum) / 10);
        for (const warning of warnings) {
          expect(describeTrackingWarning(warning)).toMatch(/^[A-Z0-9].*\.$/);
        }
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });
});
