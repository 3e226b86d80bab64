import type { Formulary, Rule } from "@steelyard/core/dosing";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { readFormularyText, reviewFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edited, medicineOf, useOf } from "./loose.ts";

function withRule(rule: Rule): Formulary {
  return edited((f) => {
    f.medicines = [medicineOf(f, "lorazepam")];
    const use = useOf(f, "lorazepam", "seizure");
    use.options = [{ ...use.options[0], rule }];
    f.medicines[0].uses = [use];
  });
}

const perKg = (amountPerKg: number, extra: object = {}) =>
  ({ kind: "per-kg", amountPerKg, unit: "mg", basis: "total", ...extra }) as const;

describe("reviewFormulary()", () => {
  // Artesunate, 3 mg/kg under 20 kg and 2.4 mg/kg from 20 kg: 20 % less at the edge, as published (check value CV064).
  it("says the step of a published dose at the edge of a band of weight", () => {
    const rule: Rule = {
      kind: "weight-bands",
      basis: "total",
      bands: [
        { lowKg: 0, highKg: 20, rule: perKg(3) },
        { lowKg: 20, rule: perKg(2.4) },
      ],
    };
    expect(reviewFormulary(withRule(rule), { stepShare: 0.19 })).toEqual([
      {
        place: "lorazepam, use seizure",
        message: "steps from 60 mg just under 20 kg to 48 mg at 20 kg, 20 % less",
      },
    ]);
    expect(reviewFormulary(withRule(rule))).toEqual([]);
  });

  it("counts the maximum of a band", () => {
    const rule: Rule = {
      kind: "weight-bands",
      basis: "total",
      bands: [
        { lowKg: 0, highKg: 50, rule: perKg(2, { maximum: { amount: 40, unit: "mg" } }) },
        { lowKg: 50, rule: { kind: "fixed", amount: 0.1, unit: "g" } },
      ],
    };
    expect(reviewFormulary(withRule(rule)).map(({ message }) => message)).toEqual([
      "steps from 40 mg just under 50 kg to 100 mg at 50 kg, 150 % more",
    ]);
  });

  it("compares where an infusion by age starts", () => {
    const aminophylline = reviewFormulary(draftFormulary).find(
      ({ place }) => place === "aminophylline, use asthma-infusion",
    );
    expect(aminophylline?.message).toBe(
      "the start steps from 1 mg/kg just under 9 years to 0.7 mg/kg at 9 years, 30 % less",
    );
  });

  it("compares bands of age per kg", () => {
    const rule: Rule = {
      kind: "age-bands",
      bands: [
        { lowMonths: 0, highMonths: 12, rule: perKg(2) },
        { lowMonths: 12, rule: perKg(1) },
      ],
    };
    expect(reviewFormulary(withRule(rule)).map(({ message }) => message)).toEqual([
      "steps from 2 mg/kg just under 12 months to 1 mg/kg at 12 months, 50 % less",
    ]);
  });
});

describe("validateFormulary() with the engine", () => {
  it("finds a strength that no syringe can measure for any child", () => {
    const formulary = edited((f) => {
      const strength = medicineOf(f, "lorazepam").strengths[0];
      strength.amountPerMl = 900;
      delete strength.smallVolumeDilution;
    });
    const result = validateFormulary(formulary);
    const messages = result.ok ? [] : result.error.map(({ message }) => message);
    expect(messages.join("\n")).toMatch(
      /gives no child a volume that a syringe can measure|check dose and strength/,
    );
    const weaker = edited((f) => {
      const strength = medicineOf(f, "lorazepam").strengths[0];
      strength.amountPerMl = 100;
      delete strength.smallVolumeDilution;
    });
    const alone = validateFormulary(weaker);
    expect(alone.ok ? [] : alone.error.map(({ message }) => message)).toContain(
      `strength ${medicineOf(weaker, "lorazepam").strengths[0].id} gives no child a volume that a syringe can measure`,
    );
  });
});

describe("readFormularyText()", () => {
  it("takes exactly the texts that JSON.parse takes", () => {
    const pieces = fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"a"',
      '"b"',
      "1",
      "-0",
      "1e5",
      "true",
      " ",
      "\n",
      '"\\u00e9"',
      "01",
      "x",
    );
    const made = fc.oneof(
      fc.json(),
      fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(made, (text) => {
        const result = readFormularyText(text);
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        const isTwice = !result.ok && result.error.every(({ message }) => message.includes("twice"));
        expect(result.ok || isTwice).toBe(isJson);
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });

  it("reads what was written", () => {
    expect(readFormularyText(writeFormulary(draftFormulary))).toEqual({ ok: true, value: draftFormulary });
  });

  it.each([
    ['{\n  "a": 1,\n  "b" 2\n}', "line 3", /is not JSON/],
    ["", "line 1", /is not JSON: expected a value, found the end/],
    ['{"a": 01}', "line 1", /is not JSON/],
    ['{"a": "\\x"}', "line 1", /is not JSON/],
    ['{"a": 1,}', "line 1", /name of a field/],
    ["[1, 2] 3", "line 1", /expected nothing more, found "3"/],
    ['{"a": {"x": 1}, "b": {"x": 2,\n\n"x": 3}}', "line 3", /field "x" is there twice/],
    ['[{"a": ":{", "b": 1,\n "\\u0061": 2}]', "line 2", /field "a" is there twice/],
  ])("finds what is wrong in %j", (text, place, message) => {
    const result = readFormularyText(text);
    expect(result.ok ? [] : result.error).toEqual([{ place, message: expect.stringMatching(message) }]);
  });
});
