import { validateFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import { edited, type Loose, medicineOf, useOf } from "./ownership/loose.ts";

function faultsAfter(edit: (formulary: Loose) => void): string[] {
  const result = validateFormulary(edited(edit));
  return result.ok ? [] : result.error.map(({ place, message }) => `${place}: ${message}`);
}

const lorazepam = (f: Loose): Loose => useOf(f, "lorazepam", "seizure").options[0];
const strength = (f: Loose): Loose => medicineOf(f, "lorazepam").strengths[0];
const citations = [{ sourceId: "common-practice", verification: "common practice" }];

function tiered(f: Loose, tiers: unknown[], extra: object = {}): void {
  const use = useOf(f, "balanced-crystalloid", medicineOf(f, "balanced-crystalloid").uses[0].id);
  const [option] = use.options;
  use.options = [
    { ...option, rule: { kind: "tiered-rate", unit: "mL", per: "h", basis: "total", tiers, ...extra } },
  ];
  use.defaultOption = option.id;
  delete use.repeat;
}

describe("validateFormulary() and substances, tiers, rates, duplicates", () => {
  it.each<[string, (f: Loose) => void, RegExp]>([
    [
      "a dose of a substance that the label does not state",
      (f) => Object.assign(lorazepam(f).rule, { expressedAs: "calcium" }),
      /lorazepam, use seizure: strength \S+ does not state its content of calcium, which the dose is of/,
    ],
    [
      "a label that counts an element for a dose that does not say so",
      (f) => Object.assign(strength(f), { expressedAs: "calcium" }),
      /counts calcium, but the dose does not say that it is of calcium/,
    ],
    [
      "a content in a unit of another kind",
      (f) => {
        Object.assign(lorazepam(f).rule, { expressedAs: "calcium" });
        strength(f).equivalents = [{ expressedAs: "calcium", amountPerMl: 1, unit: "mmol", citations }];
      },
      /is in mmol per mL, but the dose is in mg/,
    ],
    ["tiers that end", (f) => tiered(f, [{ upToKg: 10, perKg: 4 }]), /the last tier ends at 10 kg/],
    [
      "tiers that fall",
      (f) => tiered(f, [{ upToKg: 20, perKg: 4 }, { upToKg: 10, perKg: 2 }, { perKg: 1 }]),
      /tier 2 ends at 10 kg, not above 20 kg/,
    ],
    [
      "a tier that is open too early",
      (f) => tiered(f, [{ perKg: 4 }, { perKg: 1 }]),
      /tier 1 is open, but is not the last/,
    ],
    [
      "a maximum of tiers in a mass",
      (f) => tiered(f, [{ perKg: 4 }], { maximum: { amount: 1, unit: "mg" } }),
      /maximum is in mg, but the dose is in mL/,
    ],
    [
      "a highest rate in another kind of unit",
      (f) => {
        useOf(f, "lorazepam", "seizure").administration.maximumRate = {
          amount: { amount: 1, unit: "mL" },
          perKg: false,
          per: "min",
        };
      },
      /highest rate is in mL, but the dose is in mg/,
    ],
    [
      "a flat highest rate in another kind of unit",
      (f) => {
        useOf(f, "phenytoin", "seizure").administration.maximumRate = {
          amount: { amount: 1, unit: "mg" },
          perKg: true,
          per: "min",
          maximum: { amount: 50, unit: "mmol" },
        };
      },
      /flat highest rate is in mmol, but the dose is in mg/,
    ],
    [
      "a share of the excess for another weight than the adjusted one",
      (f) => {
        Object.assign(useOf(f, "phenytoin", "seizure").options[0]?.rule ?? {}, { shareOfExcess: 1.33 });
      },
      /share of the excess weight, but goes by total weight/,
    ],
    [
      "a share of the excess that nobody has published",
      (f) => {
        Object.assign(useOf(f, "phenytoin", "seizure").options[2]?.rule ?? {}, { shareOfExcess: 13.3 });
      },
      /counts 13.3 times the excess weight/,
    ],
    [
      "a cumulative maximum that ends below the heaviest",
      (f) => {
        const [light] = useOf(f, "paracetamol", "pain-iv").repeat?.cumulativeMaximum?.byWeight ?? [];
        Object.assign(useOf(f, "paracetamol", "pain-iv").repeat?.cumulativeMaximum ?? {}, {
          byWeight: [light],
        });
      },
      /cumulative maximum ends at 10 kg/,
    ],
    [
      "a band of a cumulative maximum in another kind of unit",
      (f) => {
        Object.assign(useOf(f, "paracetamol", "pain-iv").repeat?.cumulativeMaximum?.byWeight?.[1] ?? {}, {
          total: { amount: 4, unit: "mL" },
        });
      },
      /cumulative maximum is in mL, but the dose is in mg/,
    ],
    [
      "two flat highest rates",
      (f) => {
        useOf(f, "phenytoin", "seizure").administration.maximumRate = {
          amount: { amount: 1, unit: "mg" },
          perKg: false,
          per: "min",
          maximum: { amount: 50, unit: "mg" },
        };
      },
      /has two highest rates/,
    ],
    [
      "a highest concentration in another kind of unit",
      (f) => {
        useOf(f, "lorazepam", "seizure").administration.maximumConcentrationPerMl = {
          amount: 1,
          unit: "mmol",
        };
      },
      /highest concentration is in mmol, but the dose is in mg/,
    ],
    [
      "a medicine that is there under two ids",
      (f) => f.medicines.push({ ...medicineOf(f, "lorazepam"), id: "another" }),
      /formulary: medicine name lorazepam occurs more than once/,
    ],
    [
      "a use that is there under two ids",
      (f) => medicineOf(f, "lorazepam").uses.push({ ...useOf(f, "lorazepam", "seizure"), id: "another" }),
      /lorazepam: the use .* occurs more than once/,
    ],
  ])("finds %s", (_, edit, message) => {
    expect(faultsAfter(edit)).toEqual(expect.arrayContaining([expect.stringMatching(message)]));
  });

  it("lets maintenance by tiers and a fluid by mL/kg/h stand without a preparation", () => {
    expect(faultsAfter((f) => tiered(f, [{ upToKg: 10, perKg: 4 }, { perKg: 2 }]))).toEqual([]);
  });
});
