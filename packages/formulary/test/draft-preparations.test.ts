import { computeSheet, type PreparedInfusion, type SheetLine } from "@steelyard/core/dosing";
import { centimetres, kilograms, months } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";

/** From the smallest survivors to adults: weight, age and length of invented children. */
const children = [
  { kg: 0.7, ageMonths: 0, cm: 32 },
  { kg: 3, ageMonths: 0.3, cm: 50 },
  { kg: 5.5, ageMonths: 3, cm: 60 },
  { kg: 9.9, ageMonths: 12, cm: 75 },
  { kg: 10, ageMonths: 12, cm: 75 },
  { kg: 19.9, ageMonths: 66, cm: 112 },
  { kg: 20, ageMonths: 66, cm: 112 },
  { kg: 40, ageMonths: 138, cm: 146 },
  { kg: 80, ageMonths: 186, cm: 172 },
  { kg: 120, ageMonths: 200, cm: 178 },
];

function sheetOf({ kg, ageMonths, cm }: (typeof children)[number]): SheetLine[] {
  return computeSheet({
    formulary: draftFormulary,
    weights: {
      totalKg: kilograms(kg),
      idealKg: kilograms(Math.min(kg, 65)),
      adjustedKg: kilograms(Math.min(kg, 80)),
      leanKg: kilograms(0.8 * Math.min(kg, 65)),
    },
    ageMonths: months(ageMonths),
    lengthCm: centimetres(cm),
  });
}

function infusionsOf(child: (typeof children)[number]): { place: string; prepared: PreparedInfusion }[] {
  return sheetOf(child).flatMap((line) =>
    line.unavailable
      ? []
      : (line.preparations ?? []).map((prepared) => ({ place: `${line.id} ${prepared.id}`, prepared })),
  );
}

/** What is drawn from the container, before rounding and after. */
function drawnMl({ working }: PreparedInfusion): number {
  return Math.max(0, ...working.flatMap((step) => (step.step === "volume" ? [step.ml] : [])));
}

describe.each(children)("the infusions of the draft for a child of $kg kg", (child) => {
  const infusions = infusionsOf(child);

  it("fit the syringe they are made up in", () => {
    const tooMuch = infusions.filter(({ prepared }) => drawnMl(prepared) > prepared.totalMl);
    expect(tooMuch.map(({ place }) => place)).toEqual([]);
  });

  it("start between the ends of their range", () => {
    const outside = infusions.filter(
      ({ prepared: { lowMlPerH, mlPerH, highMlPerH } }) => lowMlPerH > mlPerH || mlPerH > highMlPerH,
    );
    expect(outside.map(({ place }) => place)).toEqual([]);
  });
});

describe("the children above", () => {
  it("get infusions", () => {
    expect(children.filter((child) => infusionsOf(child).length < 15)).toEqual([]);
  });
});
