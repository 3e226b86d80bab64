import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeEquipment } from "../equipment/index.ts";
import { computeSigns } from "../signs/index.ts";
import { describeEquipmentItem, describeEquipmentNote, describeEquipmentSize } from "./describe-equipment.ts";
import {
  describeLookupGap,
  describeLookupRests,
  describeLookupStep,
  describeLookupWarning,
} from "./describe-lookup.ts";
import { describeSign, describeSignValue } from "./describe-signs.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

type Child = Parameters<typeof computeEquipment>[0];

function equipmentOf(child: Child): ReadonlyMap<string, readonly string[]> {
  return new Map(
    computeEquipment(child).map((line) => [
      line.id,
      [
        describeEquipmentItem(line),
        ...(line.unavailable === undefined
          ? [line, ...line.alternatives].map((choice) => describeEquipmentSize(line.item, choice))
          : [describeLookupGap(line.unavailable)]),
        ...(line.unavailable === undefined ? line.notes.map((note) => describeEquipmentNote(note)) : []),
        ...line.working.map((step) => describeLookupStep(step)),
        ...line.warnings.map((warning) => describeLookupWarning(warning)),
      ].map(plain),
    ]),
  );
}

function signsOf(child: Child): ReadonlyMap<string, readonly string[]> {
  return new Map(
    computeSigns(child).map((line) => [
      line.id,
      [
        describeSign(line),
        line.unavailable === undefined ? describeSignValue(line) : describeLookupGap(line.unavailable),
        ...line.working.map((step) => describeLookupStep(step)),
        ...line.warnings.map((warning) => describeLookupWarning(warning)),
      ].map(plain),
    ]),
  );
}

describe("the sentences of equipment and signs", () => {
  const short = { ageMonths: 120, lengthCm: 115, totalKg: 22, idealKg: 20.4, armMm: 160 };
  const unknownAge = { lengthCm: 136, totalKg: 28.4 };

  it.each([
    [
      "tracheal-tube.uncuffed",
      short,
      [
        "Tracheal tube, uncuffed",
        "6.5 mm",
        "6.0 mm",
        "Age 10 years ÷ 4 + 4 = 6.5 mm.",
        "6.5 mm: the nearest size is 6.5 mm.",
        "The age is known, so the rule by age stands first.",
        "Published rules differ for this child: 6.0 mm to 6.5 mm.",
      ],
    ],
    [
      "suction-catheter",
      { ageMonths: 48, totalKg: 16 },
      ["Suction catheter", "8 Fr", "The tube 4.5 mm × 2 = 9 Fr.", "9 Fr: the next size below is 8 Fr."],
    ],
    [
      "blood-pressure-cuff",
      short,
      [
        "Blood-pressure cuff",
        "6 cm wide, 20 cm long",
        "40 % of the arm, 160 mm, is 6.4 cm.",
        "6.4 cm: the nearest size is 6 cm.",
      ],
    ],
    [
      "laryngoscope-blade",
      unknownAge,
      [
        "Laryngoscope blade",
        "size 3, curved",
        "size 2, curved",
        "Height-age: the median child of 136 cm is 9 years 5 months old.",
        "Age 9 years 5 months falls in the band from 8 years to under 10 years.",
        "Age not known: by height-age, 9 years 5 months, the age at which the median child is 136 cm long.",
      ],
    ],
    [
      "tidal-volume",
      short,
      [
        "Tidal volume",
        "122 to 163 mL",
        "Right when the chest just rises.",
        "6 to 8 mL/kg × 20.4 kg ideal weight = 122 to 163 mL.",
      ],
    ],
    ["tidal-volume", unknownAge, ["Tidal volume", "Needs length."]],
    [
      "intraosseous-needle",
      { ageMonths: 0.1, totalKg: 2.5 },
      ["Intraosseous needle", "Total weight 2.5 kg is outside the rule (from 3 kg)."],
    ],
    [
      "mask",
      { ageMonths: 3, totalKg: 6 },
      ["Face mask", "round", "Age 3 months falls in the band under 12 months."],
    ],
  ] as const)("%s", (id, child, sentences) => {
    expect(equipmentOf(child).get(id)).toEqual(sentences);
  });

  it.each([
    [
      "heart-rate",
      { ageMonths: 48, totalKg: 16 },
      ["Heart rate", "81 to 117 per minute", "Age 4 years falls in the band from 4 years to under 6 years."],
    ],
    [
      "systolic-pressure.lower-limit",
      { ageMonths: 156, totalKg: 45 },
      [
        "Systolic pressure, lower limit",
        "90 mmHg",
        "Age 13 years falls in the band from 10 years.",
        "From 12 years this limit lies below the 5th centile of healthy children.",
      ],
    ],
    [
      "urine-output",
      { ageMonths: 48, totalKg: 30, idealKg: 16 },
      [
        "Urine, at least",
        "16 mL/h",
        "Age 4 years falls in the band from 12 months.",
        "1 mL/kg/h × 16 kg ideal weight = 16 mL/h.",
        "Counted on ideal weight, 16 kg, as total weight, 30 kg, is more than 20 % above it.",
      ],
    ],
    ["blood-volume", { totalKg: 30 }, ["Blood volume", "Needs age or length."]],
  ] as const)("%s", (id, child, sentences) => {
    expect(signsOf(child).get(id)).toEqual(sentences);
  });

  it("name what a value rests on", () => {
    expect(describeLookupRests(["height-age", "total-weight"])).toBe("height-age and total weight");
  });

  it("exist for every line of any child, with no hole in them", () => {
    fc.assert(
      fc.property(
        fc.record(
          {
            ageMonths: fc.double({ min: 0, max: 240, noNaN: true }),
            lengthCm: fc.double({ min: 20, max: 250, noNaN: true }),
            armMm: fc.double({ min: 30, max: 850, noNaN: true }),
            idealKg: fc.double({ min: 0.4, max: 120, noNaN: true }),
            totalKg: fc.double({ min: 0.3, max: 300, noNaN: true }),
          },
          { requiredKeys: ["totalKg"] },
        ),
        (child) => {
          for (const sentence of [...equipmentOf(child).values(), ...signsOf(child).values()].flat())
            expect(sentence).toMatch(/^[^{}]+$/);
          const all = JSON.stringify([[...equipmentOf(child)], [...signsOf(child)]]);
          expect(all).not.toMatch(/undefined|NaN|\[object/);
        },
      ),
      { seed: 20261125, numRuns: 200 },
    );
  });
});
