import { defaultBodyModel, estimateWeight, referenceSite } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { plainFormulas } from "@steelyard/study/formulas";
import { describe, expect, it } from "vitest";
import sources from "../../docs/sources.json" with { type: "json" };
import { buildByEye } from "../src/accuracy-page/build-by-eye.ts";
import { drawSvg } from "../src/accuracy-page/draw-svg.ts";
import { drawWeight } from "../src/accuracy-page/draw-weight.ts";
import { groupByZ } from "../src/accuracy-page/group-by-z.ts";
import { quantileOf } from "../src/accuracy-page/quantile-of.ts";
import { placeChildren } from "../src/accuracy-page/regression-to-the-mean.ts";
import { whoWeightForLengthZ } from "../src/accuracy-page/who-weight-for-length.ts";
import { writeAccuracy } from "../src/accuracy-page/write-accuracy.ts";
import type { HeldOutFit } from "../src/fit/fit-and-hold-out.ts";
import type { FitChild } from "../src/fit/fit-child.ts";
import { normalRandom, seededRandom } from "../src/seeded-random.ts";

const model = defaultBodyModel();

/** Invented children of 65 to 115 cm whose weights are drawn from the model, so that it is right about them. */
function inventChildren(n: number): readonly FitChild[] {
  const uniform = seededRandom(1);
  const normal = normalRandom(seededRandom(2));
  return Array.from({ length: n }, (_, i): FitChild => {
    const lengthCm = Math.round(10 * (65 + 50 * uniform())) / 10;
    const sex = uniform() < 0.5 ? "m" : "f";
    const armMm = Math.round(95 + 0.6 * lengthCm + 9 * normal());
    const estimate = estimateWeight(
      { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm), sex },
      { model, site: referenceSite },
    );
    if (!estimate.ok) throw new Error(estimate.error.type);
    const weightKg = drawWeight({ components: estimate.value.components, uniform, normal });
    return {
      source: "invented",
      childId: i + 1,
      sex,
      lengthCm,
      armMm,
      weightKg,
      ageMonths: 6 + (lengthCm - 65),
    };
  });
}

describe("a plain formula", () => {
  const estimate = (
    sourceId: string,
    child: { ageMonths?: number; armMm?: number; lengthCm?: number },
  ): number | undefined =>
    plainFormulas.find((formula) => formula.sourceId === sourceId)?.estimateKg({ lengthCm: 100, ...child });

  // By hand from each formula; ages in completed years or months.
  it.each([
    ["christchurch-icu-handbook", { ageMonths: 12 }, 10],
    ["christchurch-icu-handbook", { ageMonths: 47.5 }, 14],
    ["alsg-apls-2011", { ageMonths: 6.5 }, 7],
    ["alsg-apls-2011", { ageMonths: 48 }, 16],
    ["alsg-apls-2011", { ageMonths: 96 }, 31],
    ["luscombe2007", { ageMonths: 60 }, 22],
    ["tinning2007", { ageMonths: 6.5 }, 7.5],
    ["tinning2007", { ageMonths: 36 }, 16],
    ["tinning2007", { ageMonths: 120 }, 40],
    ["theron2005", { ageMonths: 60 }, 21.65],
    ["cattermole2010", { ageMonths: 60, armMm: 170 }, 21],
    ["traub1980", { ageMonths: 60, lengthCm: 120.7 }, 23.76],
    ["traub1983", { lengthCm: 120.7 }, 22.41],
  ] as const)("of %s gives what it says for %o", (sourceId, child, kg) => {
    expect(estimate(sourceId, child)).toBeCloseTo(kg, 2);
  });

  it.each([
    ["luscombe2007", { ageMonths: 11.5 }],
    ["luscombe2007", { ageMonths: 132 }],
    ["luscombe2007", {}],
    ["tinning2007", { ageMonths: 180 }],
    ["cattermole2010", { ageMonths: 60 }],
    ["traub1983", { lengthCm: 74.7 }],
  ] as const)("of %s says nothing of %o, whom it is not for", (sourceId, child) => {
    expect(estimate(sourceId, child)).toBeUndefined();
  });
});

describe("whoWeightForLengthZ()", () => {
  it("agrees with the printed table for a boy of 85 cm, and ends where the standard ends", () => {
    // WHO simplified field table: 9.8 kg at -2, 13.6 kg at 2.
    expect(whoWeightForLengthZ({ sex: "m", lengthCm: 85, weightKg: 9.809 })).toBeCloseTo(-2, 2);
    expect(whoWeightForLengthZ({ sex: "m", lengthCm: 85, weightKg: 13.612 })).toBeCloseTo(2, 2);
    expect(whoWeightForLengthZ({ sex: "f", lengthCm: 120.8, weightKg: 22 })).toBeUndefined();
    expect(whoWeightForLengthZ({ sex: "f", lengthCm: 44.9, weightKg: 2.4 })).toBeUndefined();
  });
});

describe("drawWeight()", () => {
  it("draws from the estimate's own distribution", () => {
    const estimate = estimateWeight({ lengthCm: centimetres(90), armMm: millimetres(150) }, { model });
    if (!estimate.ok) throw new Error(estimate.error.type);
    const { components, totalKg, low95Kg, high95Kg } = estimate.value;
    const uniform = seededRandom(3);
    const normal = normalRandom(seededRandom(4));
    const drawn = Array.from({ length: 4000 }, () => drawWeight({ components, uniform, normal }));
    const share = (holds: (kg: number) => boolean): number => drawn.filter(holds).length / drawn.length;
    // Four standard errors of a share of 4,000.
    expect(Math.abs(share((kg) => kg < totalKg) - 0.5)).toBeLessThan(0.032);
    expect(Math.abs(share((kg) => kg < low95Kg) - 0.025)).toBeLessThan(0.01);
    expect(Math.abs(share((kg) => kg > high95Kg) - 0.025)).toBeLessThan(0.01);
  });
});

describe("buildByEye()", () => {
  const medianKg = Math.exp(model.byLength.at("f", 100).curve("weight").logMedian);
  const word = (share: number, error = 0) =>
    buildByEye({
      model,
      child: { sex: "f", lengthCm: 100, weightKg: share * medianKg },
      normal: () => error,
    });

  it("is the truth where the eye makes no error, and another word where it does", () => {
    expect([0.7, 0.88, 1, 1.14, 1.5].map((share) => word(share))).toEqual([
      "very-thin",
      "thin",
      "average",
      "heavy",
      "very-heavy",
    ]);
    expect(word(1, -2)).toBe("very-thin");
  });
});

describe("regression to the mean", () => {
  it("shows in children grouped by their true weight and not by the estimate, though the model is exact", () => {
    const { arm } = placeChildren({
      children: inventChildren(4000),
      modelFor: () => model,
      site: referenceSite,
    });
    const meanOf = (by: "trueZ" | "estimateZ", name: string): number =>
      groupByZ(arm, by).find((group) => group.name === name)?.meanError ?? Number.NaN;
    expect(meanOf("trueZ", "-2 to -1")).toBeGreaterThan(3);
    expect(meanOf("trueZ", "2 to 3")).toBeLessThan(-3);
    expect(Math.abs(meanOf("estimateZ", "-2 to -1"))).toBeLessThan(1.5);
    expect(Math.abs(meanOf("estimateZ", "1 to 2"))).toBeLessThan(1.5);
  });
});

describe("quantileOf()", () => {
  it("is linear between the values, in any order", () => {
    expect([0, 0.25, 0.5, 0.9, 1].map((share) => quantileOf([40, 10, 30, 20], share))).toEqual([
      10, 17.5, 25, 37, 40,
    ]);
    expect(() => quantileOf([], 0.5)).toThrow("values must not be empty");
  });
});

describe("drawSvg()", () => {
  it("gives the same bytes again", () => {
    const draw = () => drawSvg({ title: "empty", x: { domain: [0, 1 / 3] }, y: { domain: [0, 1] } });
    expect(draw()).toBe(draw());
    expect(draw()).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" role="img" /);
    expect(draw()).not.toMatch(/\d\.\d{3}/);
  });
});

describe("writeAccuracy()", () => {
  const children = inventChildren(600);
  const fit: HeldOutFit = {
    load: { children: [], files: [], inBoth: 0, differing: 0 },
    selection: { children, dropped: new Map() },
    infants: [],
    references: undefined as never,
    heldOut: () => model,
    surveys: {
      survey: {
        children: children.slice(0, 100).map(({ sex, lengthCm, weightKg, armMm = 0 }) => ({
          dataset: "invented survey",
          country: "nowhere",
          sex,
          lengthCm,
          weightKg,
          armMm,
        })),
        dropped: new Map(),
      },
      modelFor: () => model,
    },
  };
  const texts = writeAccuracy({ fit, model, sources });
  const page = texts.get("accuracy.md") ?? "";

  it("writes the same bytes again, with every figure it shows and no other", () => {
    expect([...writeAccuracy({ fit, model, sources })]).toEqual([...texts]);
    const shown = [...page.matchAll(/\]\((figures\/[^)]+)\)/g)].map((match) => match[1]);
    expect([...texts.keys()].filter((path) => path !== "accuracy.md").sort()).toEqual(shown.sort());
  });

  it("judges each formula and the model on the same children", () => {
    expect(page).toMatch(/^\| length \+ arm \+ sex \| 600 \|/m);
    expect(page).toMatch(/^### invented survey$/m);
    const oldest = children.filter(({ ageMonths = 0 }) => ageMonths >= 12).length;
    expect(page).toMatch(new RegExp(`\\| 3 × age \\+ 7, 1 to 10 years \\(.*\\) \\| ${oldest} \\|`));
  });

  it.each([...texts])("%s holds numbers only, in black, white and grey", (_, text) => {
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    const colours = [...text.matchAll(/(?:fill|stroke)="(#[0-9a-f]+|[a-z]+)"/gi)].map((match) => match[1]);
    for (const colour of colours)
      expect(colour).toMatch(/^(none|black|white|grey|currentColor|#(.)\2\2|#(..)\3\3)$/);
  });

  it("says which source it lacks, and that it needs the surveys", () => {
    expect(() => writeAccuracy({ fit, model, sources: [] })).toThrow("docs/sources.json does not have it");
    const { surveys: _, ...alone } = fit;
    expect(() => writeAccuracy({ fit: alone, model, sources })).toThrow("without the surveys");
  });
});
