import { computeChild } from "@steelyard/core/child";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { emptyBedside } from "../state/bedside-state.ts";
import { formularyIndex } from "../state/formulary-index.ts";
import { readBedside, type WeighedChild } from "../state/read-bedside.ts";
import { bestNextMeasurement, computeReport } from "./compute-report.ts";

function weighed(texts: Partial<typeof emptyBedside.texts>): WeighedChild {
  const { child } = readBedside({ texts: { ...emptyBedside.texts, ...texts }, typing: undefined });
  if (child === undefined) throw new Error("no weight");
  return child;
}

describe("computeReport()", () => {
  test("gives, problem by problem, exactly the sheet that the library computes", () => {
    const child = weighed({ lengthCm: "136", armMm: "190", sex: "f", ageMonths: "9 y" });
    const report = computeReport(child);
    const whole = computeChild({ measurements: child.measurements, formulary: draftFormulary });
    const lines = formularyIndex.problems.flatMap(({ problem }) => report.linesOf(problem));
    expect(lines.length).toBeGreaterThan(100);
    const byId = (sheet: readonly { readonly id: string }[]) =>
      sheet.toSorted((a, b) => (a.id < b.id ? -1 : 1));
    expect(byId(lines)).toEqual(whole.ok && byId(whole.value.sheet));
  });

  test("gives the equipment and signs that the library computes, once", () => {
    const child = weighed({ lengthCm: "136", armMm: "190", sex: "f" });
    const report = computeReport(child);
    const whole = computeChild({ measurements: child.measurements, formulary: draftFormulary });
    const { equipment, signs } = report.lookups();
    expect({ equipment, signs }).toEqual(
      whole.ok && { equipment: whole.value.equipment, signs: whole.value.signs },
    );
    expect(report.lookups()).toBe(report.lookups());
  });

  test("computes a problem once", () => {
    const report = computeReport(weighed({ lengthCm: "136" }));
    expect(report.linesOf("arrest")).toBe(report.linesOf("arrest"));
  });
});

describe("bestNextMeasurement()", () => {
  test("proposes the arm first, then a girth that narrows the range further", () => {
    const arm = bestNextMeasurement(weighed({ lengthCm: "136" }));
    const waist = bestNextMeasurement(weighed({ lengthCm: "136", armMm: "190" }));
    expect(arm?.percent).toBeLessThan(20);
    expect(waist?.field).not.toBe("armMm");
    expect(waist?.percent).toBeLessThan(arm?.percent ?? 0);
  });

  test("has nothing to propose for a child that was weighed", () => {
    expect(bestNextMeasurement(weighed({ lengthCm: "136", scaleKg: "28" }))).toBeUndefined();
  });
});
