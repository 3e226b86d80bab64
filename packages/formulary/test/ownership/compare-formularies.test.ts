import { draftFormulary } from "@steelyard/formulary";
import { compareFormularies, describeDifference } from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { edited, type Loose, medicineOf, useOf } from "./loose.ts";

function words(edit: (formulary: Loose) => void): string[] {
  return compareFormularies(draftFormulary, edited(edit)).map(describeDifference);
}

const rule = (f: Loose, medicine: string, use: string, option = 0): Loose =>
  useOf(f, medicine, use).options[option].rule;
const tranexamic = "tranexamic-acid, use trauma, option";

describe("compareFormularies()", () => {
  it("finds nothing between a formulary and itself", () => {
    expect(compareFormularies(draftFormulary, structuredClone(draftFormulary))).toEqual([]);
  });

  it("says a limit as a pharmacist reads it", () => {
    const [sentence] = words((f) =>
      Object.assign(rule(f, "atropine", "bradycardia").maximum, { amount: 300 }),
    );
    expect(sentence).toBe("atropine, use bradycardia, option no-minimum: maximum 500 → 300 micrograms");
  });

  it.each<[string, (f: Loose) => void, string]>([
    [
      "a dose per kg",
      (f) => Object.assign(rule(f, "lorazepam", "seizure"), { amountPerKg: 0.05 }),
      "lorazepam, use seizure, option by-weight: dose 0.1 → 0.05 mg/kg",
    ],
    [
      "the end of an accepted range",
      (f) => Object.assign(rule(f, "lorazepam", "seizure").accepted, { lowPerKg: 0.05 }),
      "lorazepam, use seizure, option by-weight: accepted, from 0.08 → 0.05 mg/kg",
    ],
    [
      "a limit that is dropped",
      (f) => {
        delete rule(f, "lorazepam", "seizure").maximum;
      },
      "lorazepam, use seizure, option by-weight: maximum removed: 4 mg",
    ],
    [
      "a basis",
      (f) => Object.assign(rule(f, "lorazepam", "seizure"), { basis: "adjusted" }),
      'lorazepam, use seizure, option by-weight: basis "ideal" → "adjusted"',
    ],
    ["a use that is gone", (f) => medicineOf(f, "adrenaline").uses.shift(), "adrenaline: use arrest is gone"],
    [
      "a medicine that is new",
      (f) => f.medicines.push({ ...medicineOf(f, "lorazepam"), id: "ours" }),
      "formulary: ours is new",
    ],
    [
      "the edge of a band",
      (f) => Object.assign(rule(f, "midazolam", "seizure-buccal", 1).bands[0], { highMonths: 13 }),
      "midazolam, use seizure-buccal, option by-age: bands, number 1, to under 12 months → 13 months",
    ],
    [
      "the strength of an ampoule",
      (f) => Object.assign(medicineOf(f, "adenosine").strengths[0], { amountPerMl: 2 }),
      "adenosine, strength vial-3-mg-per-ml: strength 3 → 2 mg/mL",
    ],
    [
      "the interval between doses",
      (f) => Object.assign(useOf(f, "adrenaline", "arrest").repeat.intervalMin, { high: 10 }),
      "adrenaline, use arrest: repeat, interval 3 to 5 min → 3 to 10 min",
    ],
    ["the order of medicines", (f) => f.medicines.reverse(), "order of medicines"],
  ])("says %s", (_, edit, sentence) => {
    expect(words(edit).some((said) => said.includes(sentence))).toBe(true);
    expect(words(edit)).toHaveLength(1);
  });

  it("names both units where the unit changes, with the range that counts in it", () => {
    expect(
      words((f) => Object.assign(rule(f, "lorazepam", "seizure"), { amountPerKg: 100, unit: "microgram" })),
    ).toEqual([
      "lorazepam, use seizure, option by-weight: dose 0.1 mg/kg → 100 micrograms/kg",
      "lorazepam, use seizure, option by-weight: accepted, from 0.08 mg/kg → 0.08 micrograms/kg",
      "lorazepam, use seizure, option by-weight: accepted, to 0.12 mg/kg → 0.12 micrograms/kg",
    ]);
  });

  it("finds as much in one direction as in the other", () => {
    const other = edited((f) => {
      rule(f, "tranexamic-acid", "trauma").maximum.amount = 2;
      delete rule(f, "lorazepam", "seizure").accepted;
      f.medicines.pop();
    });
    const forward = compareFormularies(draftFormulary, other);
    const back = compareFormularies(other, draftFormulary);
    expect(forward.length).toBeGreaterThan(2);
    expect(back).toHaveLength(forward.length);
    const mirrored = { added: "removed", removed: "added", changed: "changed" } as const;
    const key = (d: { place: string; field: string; change: string }) => `${d.place} ${d.field} ${d.change}`;
    expect(back.map(key).sort()).toEqual(
      forward.map((d) => key({ ...d, change: mirrored[d.change] })).sort(),
    );
    expect(forward.map(describeDifference).join("\n")).toContain(tranexamic);
  });
});
