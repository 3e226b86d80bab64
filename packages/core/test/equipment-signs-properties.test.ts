import { readFileSync } from "node:fs";
import { computeEquipment, type EquipmentLine, usualBladders } from "@steelyard/core/equipment";
import { allowableBloodLoss, computeSigns, type SignLine } from "@steelyard/core/signs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

type Line = EquipmentLine | SignLine;

const property = { seed: 20261125, numRuns: 300 };

function lineOf<L extends Line>(lines: readonly L[], id: string): L {
  const line = lines.find((each) => each.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return line;
}

/** The number of a line, the low end of a range; nothing for a word or a line without a value. */
function numberOf(line: Line): number | undefined {
  if (line.unavailable !== undefined) return undefined;
  if (typeof line.value === "number") return line.value;
  return typeof line.value === "object" ? line.value.low : undefined;
}

const tubeAt = (kind: "cuffed" | "uncuffed", given: { ageMonths?: number; lengthCm?: number }) =>
  numberOf(lineOf(computeEquipment({ totalKg: 20, ...given }), `tracheal-tube.${kind}`));

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

const anyChild = fc.record(
  {
    ageMonths: fc.option(fc.double({ min: 0, max: 240, noNaN: true }), { nil: undefined }),
    lengthCm: fc.option(fc.double({ min: 20, max: 250, noNaN: true }), { nil: undefined }),
    sex: fc.constantFrom("m" as const, "f" as const, undefined),
    armMm: fc.option(fc.double({ min: 30, max: 850, noNaN: true }), { nil: undefined }),
    idealKg: fc.option(fc.double({ min: 0.4, max: 120, noNaN: true }), { nil: undefined }),
    totalKg: fc.double({ min: 0.3, max: 300, noNaN: true }),
  },
  { requiredKeys: ["totalKg"] },
);

describe("computeEquipment() and computeSigns()", () => {
  it("give the same lines for every child, each with a finite value or a reason, and its sources", () => {
    const ids = (lines: readonly Line[]): string[] => lines.map(({ id }) => id);
    const sizes = ids(computeEquipment({ totalKg: 20 }));
    const values = ids(computeSigns({ totalKg: 20 }));
    expect(new Set(sizes).size).toBe(sizes.length);
    expect(new Set(values).size).toBe(values.length);
    fc.assert(
      fc.property(anyChild, (child) => {
        const equipment = computeEquipment(child);
        const signs = computeSigns(child);
        expect(ids(equipment)).toEqual(sizes);
        expect(ids(signs)).toEqual(values);
        for (const line of [...equipment, ...signs]) {
          expect(line.sources.length).toBeGreaterThan(0);
          for (const number of numbersIn(line)) expect(Number.isFinite(number)).toBe(true);
          if (line.unavailable === undefined) expect(line.value).toBeDefined();
          else expect(line.unavailable.type).toMatch(/^(needs|outside-rule)$/);
        }
      }),
      property,
    );
  });

  it("answer at every millimetre from 45 to 205 cm with the length alone, marked as by height-age", () => {
    for (let mm = 450; mm <= 2050; mm++) {
      const child = { lengthCm: mm / 10, totalKg: 2.5 + (mm - 450) / 20 };
      const lines: readonly Line[] = [...computeEquipment(child), ...computeSigns(child)];
      for (const line of lines) {
        const choices = line.unavailable === undefined ? [line, ...line.alternatives] : [];
        const usesHeightAge = choices.some(({ rests }) => rests.includes("height-age"));
        expect(line.warnings.some(({ type }) => type === "height-age")).toBe(usesHeightAge);
        expect(line.rests).not.toContain("age");
        // What this child lacks is an arm and an ideal weight; nothing else may be asked for.
        if (line.unavailable?.type === "needs")
          expect(["blood-pressure-cuff", "tidal-volume"]).toContain(line.id);
      }
    }
  });

  it("mark nothing as by height-age where the age is known", () => {
    const child = { ageMonths: 90, lengthCm: 125, totalKg: 25, idealKg: 25, armMm: 180 };
    for (const line of [...computeEquipment(child), ...computeSigns(child)]) {
      expect(JSON.stringify(line)).not.toContain("height-age");
      expect(line.unavailable).toBeUndefined();
    }
  });

  it.each([
    ["age", (i: number) => ({ ageMonths: i / 4 }), 960],
    ["length", (i: number) => ({ lengthCm: 45 + i / 10 }), 1600],
  ] as const)("never fall in size as %s rises", (_name, given, steps) => {
    const rising = [
      "tracheal-tube.cuffed",
      "tracheal-tube.uncuffed",
      "tracheal-tube-depth.oral",
      "tracheal-tube-depth.nasal",
      "laryngoscope-blade",
      "suction-catheter",
      "gastric-tube",
      "chest-drain",
      "urinary-catheter",
    ];
    let before: ReadonlyMap<string, number> = new Map();
    for (let i = 0; i <= steps; i++) {
      const lines = computeEquipment({ ...given(i), totalKg: 20 });
      const now = new Map<string, number>();
      for (const id of rising) {
        const size = numberOf(lineOf(lines, id));
        if (size === undefined) continue;
        expect(size, `${id} at step ${i}`).toBeGreaterThanOrEqual(before.get(id) ?? 0);
        now.set(id, size);
      }
      before = new Map([...before, ...now]);
    }
    expect(before.size).toBe(rising.length);
  });

  it("never fall in size as weight rises, and have the systolic limit rise with age", () => {
    let before = [0, 0, 0, 0];
    for (let i = 3; i <= 1200; i++) {
      const kg = i / 10;
      const lines = computeEquipment({ totalKg: kg, idealKg: kg });
      const now = [
        "supraglottic-airway.mask-type",
        "supraglottic-airway.gel-type",
        "bag",
        "tidal-volume",
      ].map((id) => numberOf(lineOf(lines, id)) ?? 0);
      for (const [at, size] of now.entries()) expect(size).toBeGreaterThanOrEqual(before[at] as number);
      before = now;
    }
    let limit = 0;
    for (let ageMonths = 0; ageMonths <= 240; ageMonths += 0.5) {
      const now = numberOf(lineOf(computeSigns({ ageMonths, totalKg: 20 }), "systolic-pressure.lower-limit"));
      expect(now).toBeGreaterThanOrEqual(limit);
      limit = now as number;
    }
  });

  it("refuse what is no number or no child, naming it", () => {
    const refusal =
      (given: object): (() => unknown) =>
      () =>
        computeEquipment({ totalKg: 20, ...given });
    expect(refusal({ totalKg: Number.NaN })).toThrow(/totalKg must be a finite number/);
    expect(refusal({ lengthCm: -1 })).toThrow(/lengthCm must be more than 0: current value is -1/);
    expect(refusal({ ageMonths: -1 })).toThrow(/ageMonths must be at least 0/);
    expect(refusal({ bladders: [] })).toThrow(/bladders must not be empty/);
    expect(refusal({ bladders: [{ widthCm: 0, lengthCm: 20 }] })).toThrow(/bladders must be more than 0 cm/);
    expect(() => computeSigns({ totalKg: 20, armMm: Number.POSITIVE_INFINITY })).toThrow(RangeError);
    const loss = { bloodVolumeMl: 1000, haematocrit: 0.4, lowestHaematocrit: 0.25 };
    expect(() => allowableBloodLoss({ ...loss, haematocrit: 40 })).toThrow(/haematocrit must be in \(0, 1\)/);
    expect(() => allowableBloodLoss({ ...loss, bloodVolumeMl: 0 })).toThrow(/bloodVolumeMl/);
  });
});

describe("edges are exact", () => {
  it("of the tracheal tube, in months", () => {
    expect([11.999, 12, 23.999, 24].map((ageMonths) => tubeAt("uncuffed", { ageMonths }))).toEqual([
      3.5, 4, 4, 4.5,
    ]);
    expect([11.999, 12, 23.999, 24].map((ageMonths) => tubeAt("cuffed", { ageMonths }))).toEqual([
      3, 3.5, 3.5, 4,
    ]);
  });

  it("of the half size, where of two as near the smaller is taken", () => {
    expect([60, 60.2].map((ageMonths) => tubeAt("uncuffed", { ageMonths }))).toEqual([5, 5.5]);
    expect([60, 60.2].map((ageMonths) => tubeAt("cuffed", { ageMonths }))).toEqual([4.5, 5]);
  });

  it("of the adult sizes, which the rules do not pass", () => {
    for (const given of [{ ageMonths: 168 }, { ageMonths: 239 }, { lengthCm: 165 }, { lengthCm: 204 }]) {
      expect([tubeAt("cuffed", given), tubeAt("uncuffed", given)]).toEqual([7, 7.5]);
    }
    expect(tubeAt("cuffed", { ageMonths: 156 })).toBe(6.5);
    const grown = lineOf(computeEquipment({ ageMonths: 169, totalKg: 50 }), "tracheal-tube.cuffed");
    expect(grown.warnings).toContainEqual({ type: "held", by: "age", at: 168 });
  });

  it("of the depth by weight", () => {
    const depth = (totalKg: number) => {
      const { rests } = lineOf(computeEquipment({ totalKg, lengthCm: 54 }), "tracheal-tube-depth.oral");
      return rests.join();
    };
    expect([3.9, 4].map(depth)).toEqual(["total-weight", "length"]);
  });

  it("of the tracheal tube, in kg", () => {
    const at = (kind: string, totalKg: number) =>
      numberOf(lineOf(computeEquipment({ ageMonths: 0.1, totalKg }), `tracheal-tube.${kind}`));
    expect([0.99, 1, 1.99, 2].map((kg) => at("uncuffed", kg))).toEqual([2.5, 3, 3, 3.5]);
    expect([2.99, 3].map((kg) => at("cuffed", kg))).toEqual([undefined, 3]);
  });

  it.each([
    [
      "supraglottic-airway.mask-type",
      [4.9, 5, 9.9, 10, 19.9, 20, 29.9, 30, 49.9, 50, 69.9, 70],
      [1, 1.5, 1.5, 2, 2, 2.5, 2.5, 3, 3, 4, 4, 5],
    ],
    [
      "supraglottic-airway.gel-type",
      [1.99, 2, 4.9, 5, 11.9, 12, 24.9, 25, 34.9, 35],
      [undefined, 1, 1, 1.5, 1.5, 2, 2, 2.5, 2.5, 3],
    ],
    ["intraosseous-needle", [2.99, 3, 39.9, 40], [undefined, 15, 15, 25]],
    ["bag", [2.49, 2.5, 24.9, 25], [240, 450, 450, 1500]],
  ] as const)("of %s, in kg", (id, weightsKg, sizes) => {
    expect(weightsKg.map((totalKg) => numberOf(lineOf(computeEquipment({ totalKg }), id)))).toEqual(sizes);
  });

  it("of the pads, by age and weight", () => {
    const pads = (ageMonths: number | undefined, totalKg: number): unknown => {
      const line = lineOf(computeEquipment({ ageMonths, totalKg }), "defibrillator-pads");
      return line.unavailable === undefined && [line.value, line.alternatives.map(({ value }) => value)];
    };
    expect(pads(undefined, 24.9)).toEqual(["child-pads", []]);
    expect(pads(undefined, 25)).toEqual(["adult-pads", []]);
    expect(pads(95.9, 24.9)).toEqual(["child-pads", []]);
    expect(pads(95.9, 25)).toEqual(["child-pads", ["adult-pads"]]);
    expect(pads(96, 24.9)).toEqual(["child-pads", ["adult-pads"]]);
    expect(pads(96, 25)).toEqual(["adult-pads", []]);
  });

  it("of the rates and pressures, in months", () => {
    const sign = (id: string, ageMonths: number) =>
      numberOf(lineOf(computeSigns({ ageMonths, totalKg: 20 }), id));
    expect([2.99, 3, 179.9, 180, 215.9, 216].map((age) => sign("heart-rate", age))).toEqual([
      123, 120, 62, 58, 58, 58,
    ]);
    expect([11.99, 12, 119.99, 120].map((age) => sign("systolic-pressure.lower-limit", age))).toEqual([
      70, 72, 90, 90,
    ]);
    expect([11.99, 12].map((age) => sign("mean-pressure.fifth-centile", age))).toEqual([undefined, 42]);
    const grown = lineOf(computeSigns({ ageMonths: 216, totalKg: 60 }), "heart-rate");
    expect(grown.warnings).toContainEqual({ type: "held", by: "age", at: 216 });
  });
});

describe("the tables and choices", () => {
  it("have centiles that rise from the 1st to the 99th at every age", () => {
    for (let ageMonths = 0; ageMonths < 216; ageMonths += 0.5) {
      for (const id of ["heart-rate", "respiratory-rate"]) {
        const line = lineOf(computeSigns({ ageMonths, totalKg: 20 }), id);
        const values = line.unavailable === undefined ? (line.centiles ?? []).map(({ value }) => value) : [];
        expect(values).toHaveLength(7);
        expect([...values].sort((a, b) => a - b)).toEqual(values);
        expect(new Set(values).size).toBe(7);
      }
    }
  });

  it("say where age and length disagree about the tube, and have both sizes", () => {
    const short = lineOf(
      computeEquipment({ ageMonths: 120, lengthCm: 115, totalKg: 22 }),
      "tracheal-tube.uncuffed",
    );
    expect(short).toMatchObject({
      value: 6.5,
      alternatives: [{ value: 6, rests: ["length"] }],
      ready: [6, 7],
    });
    expect(short.warnings).toEqual([{ type: "rules-differ", low: 6, high: 6.5, unit: "mm" }]);
  });

  it("take ideal weight for the airway of an obese child and show what total weight would give", () => {
    const line = lineOf(computeEquipment({ totalKg: 55, idealKg: 28 }), "supraglottic-airway.mask-type");
    expect(line).toMatchObject({ value: 2.5, rests: ["ideal-weight"], alternatives: [{ value: 4 }] });
  });

  it("count blood on the lighter weight and say so where the two are far apart", () => {
    const [blood] = computeSigns({ ageMonths: 120, totalKg: 60, idealKg: 30 }).filter(
      ({ id }) => id === "blood-volume",
    );
    expect(blood).toMatchObject({ value: { low: 2100, high: 2250 }, rests: ["age", "ideal-weight"] });
    expect(blood?.warnings).toEqual([{ type: "lighter-weight-used", totalKg: 60, idealKg: 30 }]);
  });

  it("take the bladder of the site's list, the wider of two as near, and warn where none fits", () => {
    const cuff = (armMm: number, bladders = usualBladders) =>
      lineOf(computeEquipment({ totalKg: 20, armMm, bladders }), "blood-pressure-cuff");
    expect(cuff(187.5)).toMatchObject({ value: 9, bladderLengthCm: 27, warnings: [] });
    expect(cuff(187)).toMatchObject({ value: 6, warnings: [{ type: "bladder-misfit", reads: "high" }] });
    expect(cuff(90)).toMatchObject({
      value: 6,
      warnings: [{ type: "bladder-misfit", reads: "low", percentOfArm: 67 }],
    });
    expect(cuff(450)).toMatchObject({ value: 15, warnings: [] });
    expect(cuff(200, [{ widthCm: 8, lengthCm: 25 }])).toMatchObject({ value: 8, warnings: [] });
  });

  it("cite every document with the title of the registry", () => {
    const path = new URL("../../../docs/sources.json", import.meta.url);
    const registry = JSON.parse(readFileSync(path, "utf8")) as readonly { id: string; title: string }[];
    const titleById = new Map(registry.map(({ id, title }) => [id, title]));
    const children = [0.2, 8, 120].flatMap((ageMonths) =>
      [1.5, 3.5, 30].map((totalKg) => ({ ageMonths, totalKg, lengthCm: 100, armMm: 180, idealKg: totalKg })),
    );
    const cited = children
      .flatMap((child): readonly Line[] => [...computeEquipment(child), ...computeSigns(child)])
      .flatMap((line) => [line, ...(line.unavailable === undefined ? line.alternatives : [])])
      .flatMap(({ sources }) => sources);
    expect(new Set(cited.map(({ sourceId }) => sourceId)).size).toBeGreaterThan(10);
    for (const { sourceId, title } of cited) expect(title).toBe(titleById.get(sourceId));
  });
});
