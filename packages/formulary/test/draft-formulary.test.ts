import { readdir } from "node:fs/promises";
import {
  computeSheet,
  type DoseOption,
  type SheetLine,
  type SimpleRule,
  type Weights,
} from "@steelyard/core/dosing";
import { convertDose, kilograms, months } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable, describeWorking } from "@steelyard/core/wording";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const RUNS = { seed: 20261125, numRuns: 300 };

const child = fc.record({
  totalKg: fc.double({ min: 0.5, max: 200, noNaN: true }),
  ratio: fc.double({ min: 0.5, max: 1.6, noNaN: true }),
  ageMonths: fc.option(fc.double({ min: 0, max: 216, noNaN: true }), { nil: undefined }),
  spread: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
});

function sheetOf({
  totalKg,
  ratio,
  ageMonths,
  spread,
}: typeof child extends fc.Arbitrary<infer T> ? T : never): SheetLine[] {
  const weights: Weights = {
    totalKg: kilograms(totalKg),
    idealKg: kilograms(totalKg * ratio),
    cumulative: (kg) => 1 / (1 + Math.exp(-(kg / totalKg - 1) / spread)),
  };
  return computeSheet({
    formulary: draftFormulary,
    weights,
    ...(ageMonths !== undefined && { ageMonths: months(ageMonths) }),
  });
}

const uses = draftFormulary.medicines.flatMap((medicine) =>
  medicine.uses.map((use) => ({ id: `${medicine.id}.${use.id}`, medicine, use })),
);

function maximaOf(option: DoseOption): { amount: number; unit: SimpleRule["unit"] }[] {
  const { rule } = option;
  const simple =
    rule.kind === "age-bands" || rule.kind === "weight-bands" ? rule.bands.map((band) => band.rule) : [rule];
  return simple.flatMap((candidate) =>
    "maximum" in candidate && candidate.maximum
      ? [convertDose({ dose: candidate.maximum, to: candidate.unit })]
      : [],
  );
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe("draftFormulary", () => {
  it("has no fault", () => {
    expect(validateFormulary(draftFormulary)).toEqual({ ok: true, value: draftFormulary });
  });

  it("is an unsigned draft", () => {
    expect(draftFormulary).toMatchObject({ signed: false, version: "draft 0.1" });
  });

  it("holds every medicine that lies in its folder, once, named as its file", async () => {
    const files = await readdir(new URL("../src/medicines", import.meta.url));
    expect(draftFormulary.medicines.map(({ id }) => `${id}.json`).sort()).toEqual(files.sort());
  });

  it("has each problem with at least one use", () => {
    const problems = new Set(uses.map(({ use }) => use.problem));
    expect([...problems]).toEqual(
      expect.arrayContaining([
        "airway",
        "anaphylaxis",
        "arrest",
        "bleeding",
        "infection",
        "salts-and-sugar",
        "seizure",
        "shock",
      ]),
    );
  });
});

describe("the sheet of the draft", () => {
  it("has one line for every use of every child, in the order of the formulary", () => {
    fc.assert(
      fc.property(child, (facts) => {
        expect(sheetOf(facts).map(({ id }) => id)).toEqual(uses.map(({ id }) => id));
      }),
      RUNS,
    );
  });

  it("holds no number that is not finite, and no dose of nothing", () => {
    const check = fc.property(child, (facts) => {
      const sheet = sheetOf(facts);
      expect(numbersIn(sheet).filter((value) => !Number.isFinite(value))).toEqual([]);
      const nothing = sheet.filter((line) => !line.unavailable && !(line.dose.amount > 0));
      expect(nothing.map(({ id }) => id)).toEqual([]);
    });
    fc.assert(check, RUNS);
  });

  it("never passes a maximum, for the first dose", () => {
    const check = fc.property(child, (facts) => {
      const past = sheetOf(facts).filter((line, index) => {
        const use = uses[index]?.use;
        const option = use?.options.find(({ id }) => id === line.option.id);
        if (line.unavailable || option === undefined) return false;
        const highest = Math.max(...maximaOf(option).map(({ amount }) => amount));
        return Number.isFinite(highest) && line.dose.amount > highest;
      });
      expect(past.map(({ id }) => id)).toEqual([]);
    });
    fc.assert(check, RUNS);
  });

  it("says every step, warning and refusal in one plain sentence", () => {
    const check = fc.property(child, (facts) => {
      const sentences = sheetOf(facts).flatMap((line) => [
        ...line.working.map((step) => describeWorking(step)),
        ...line.warnings.map((warning) => describeDosingWarning(warning)),
        ...(line.unavailable ? [describeUnavailable(line.unavailable)] : []),
      ]);
      const isPlain = (sentence: string): boolean =>
        /^[A-Z0-9].*\.$/.test(sentence) &&
        !/undefined|NaN|Infinity|\[object|\d\.\d*0(?![\d.,])/.test(sentence);
      expect(sentences.filter((sentence) => !isPlain(sentence))).toEqual([]);
    });
    fc.assert(check, RUNS);
  });

  it("cites at least one source for every line, each with a title", () => {
    for (const { sources } of sheetOf({ totalKg: 20, ratio: 1, ageMonths: 72, spread: 0.1 })) {
      expect(sources.length).toBeGreaterThan(0);
      expect(sources.every(({ title }) => title.trim() !== "")).toBe(true);
    }
  });

  it("gives another published dose when it is chosen", () => {
    const weights = { totalKg: kilograms(2.5), idealKg: kilograms(2.5) };
    const id = "atropine.bradycardia";
    const amounts = ["no-minimum", "minimum-100"].map((option) => {
      const sheet = computeSheet({ formulary: draftFormulary, weights, choices: { [id]: option } });
      const line = sheet.find((candidate) => candidate.id === id);
      return line?.unavailable ? undefined : line?.dose.amount;
    });
    expect(amounts).toEqual([50, 100]);
  });

  it("computes the second dose where it differs from the first", () => {
    const sheet = sheetOf({ totalKg: 40, ratio: 1, ageMonths: 140, spread: 0.1 });
    const further = (id: string) => {
      const line = sheet.find((candidate) => candidate.id === id);
      return line && !line.unavailable ? line.further.map(({ dose }) => dose.amount) : undefined;
    };
    expect(further("amiodarone.arrest")).toEqual([150]);
    // 200 micrograms/kg are 8 mg, 2.67 mL of 3 mg/mL, drawn up as 2.7 mL; the third dose meets its maximum.
    expect(further("adenosine.tachycardia")).toEqual([8100, 12_000]);
    expect(further("cardioversion.tachycardia")).toEqual([70, 150]);
  });
});
