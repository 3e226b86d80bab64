import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import { computeEquipment } from "../equipment/index.ts";
import { computeSigns } from "../signs/index.ts";
import { centimetres, kilograms, millimetres, months } from "../units/index.ts";
import { computeChild } from "./compute-child.ts";

function reportOf(input: Omit<Parameters<typeof computeChild>[0], "formulary">) {
  const report = computeChild({ ...input, formulary: draftFormulary });
  if (!report.ok) throw new Error(`Cannot serve: ${report.error.type}`);
  return report.value;
}

describe("equipment and signs on the report of computeChild()", () => {
  const lengthCm = centimetres(136);
  const armMm = millimetres(190);

  it("rest on this child's age, length, arm and both weights", () => {
    const measurements = { lengthCm, armMm, ageMonths: months(108), sex: "f" } as const;
    const { equipment, signs, weight } = reportOf({ measurements });
    const { totalKg, idealKg } = weight;
    const child = { lengthCm, ageMonths: 108, sex: "f", totalKg, idealKg } as const;
    expect(equipment).toEqual(computeEquipment({ ...child, armMm }));
    expect(signs).toEqual(computeSigns(child));
    expect(JSON.stringify([equipment, signs])).not.toContain("height-age");
  });

  it("go by a marked height-age, of the sex that is known, where the age is not", () => {
    const { signs } = reportOf({ measurements: { lengthCm, armMm, sex: "f" } });
    const [girl] = signs.flatMap(({ warnings }) => warnings);
    const [boy] = reportOf({ measurements: { lengthCm, armMm, sex: "m" } }).signs.flatMap((s) => s.warnings);
    expect(girl).toMatchObject({ type: "height-age", lengthCm: 136 });
    expect(girl).not.toEqual(boy);
  });

  it("take the site's own bladders", () => {
    const bladders = [{ widthCm: 8, lengthCm: 22 }];
    const { equipment } = reportOf({ measurements: { lengthCm, armMm }, bladders });
    expect(equipment.find(({ id }) => id === "blood-pressure-cuff")).toMatchObject({ value: 8 });
  });

  it("say what they need where only a scale weight is known", () => {
    const { equipment, signs } = reportOf({ measurements: { scaleKg: kilograms(20) } });
    const needs = [...equipment, ...signs].filter((line) => line.unavailable?.type === "needs");
    expect(needs.map(({ id }) => id)).toContain("tracheal-tube.cuffed");
    expect(needs.map(({ id }) => id)).toContain("heart-rate");
  });
});
