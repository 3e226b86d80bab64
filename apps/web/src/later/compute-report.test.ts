import { type EstimatedChild, nextMeasurements } from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import type { SheetLine } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { emptyBedside } from "../state/bedside-state.ts";
import { formularyIndex } from "../state/formulary-index.ts";
import { readBedside } from "../state/read-bedside.ts";
import { readBurn } from "../state/read-burn.ts";
import { computeReport } from "./compute-report.ts";

function weighed(texts: Partial<typeof emptyBedside.texts>): EstimatedChild {
  const { child } = readBedside({ texts: { ...emptyBedside.texts, ...texts }, typing: undefined });
  if (child === undefined) throw new Error("no weight");
  return child;
}

describe("computeReport()", () => {
  test("gives, problem by problem, exactly the sheet that the library computes", () => {
    const child = weighed({ lengthCm: "136", armMm: "190", sex: "f", ageMonths: "9 y" });
    const report = computeReport({ child });
    const settles = nextMeasurements(child.measurements);
    const whole = computeChild({ measurements: child.measurements, formulary: draftFormulary, settles });
    const lines = formularyIndex.problems.flatMap(({ problem }) => report.linesOf(problem));
    expect(lines.length).toBeGreaterThan(100);
    const byId = (sheet: readonly { readonly id: string }[]) =>
      sheet.toSorted((a, b) => (a.id < b.id ? -1 : 1));
    expect(byId(lines)).toEqual(whole.ok && byId(whole.value.sheet));
  });

  test("gives the equipment and signs that the library computes, once", () => {
    const child = weighed({ lengthCm: "136", armMm: "190", sex: "f" });
    const report = computeReport({ child });
    const whole = computeChild({ measurements: child.measurements, formulary: draftFormulary });
    const { equipment, signs } = report.lookups();
    expect({ equipment, signs }).toEqual(
      whole.ok && { equipment: whole.value.equipment, signs: whole.value.signs },
    );
    expect(report.lookups()).toBe(report.lookups());
  });

  test("computes a problem once", () => {
    const report = computeReport({ child: weighed({ lengthCm: "136" }) });
    expect(report.linesOf("arrest")).toBe(report.linesOf("arrest"));
  });
});

describe("the next measurement", () => {
  test("is the arm first, then a girth that narrows the range further", () => {
    const arm = computeReport({ child: weighed({ lengthCm: "136" }) }).next;
    const waist = computeReport({ child: weighed({ lengthCm: "136", armMm: "190" }) }).next;
    expect(arm?.percent).toBeLessThan(20);
    expect(waist?.field).not.toBe("armMm");
    expect(waist?.percent).toBeLessThan(arm?.percent ?? 0);
  });

  test("is nothing for a child that was weighed", () => {
    expect(computeReport({ child: weighed({ lengthCm: "136", scaleKg: "28" }) }).next).toBeUndefined();
  });

  test("settles a dose in doubt, and the line says so", () => {
    const { linesOf } = computeReport({ child: weighed({ lengthCm: "136" }) });
    const settled = formularyIndex.problems
      .flatMap(({ problem }) => linesOf(problem))
      .filter((line) => line.unavailable === undefined && line.robustness?.settledBy !== undefined);
    expect(settled.length).toBeGreaterThan(0);
  });
});

test("another published dose is computed where it was chosen, and nowhere else", () => {
  const child = weighed({ lengthCm: "136", armMm: "190" });
  const lines = formularyIndex.problems.flatMap(({ problem }) => computeReport({ child }).linesOf(problem));
  const line = lines.find(({ alternatives }) => alternatives.length > 0);
  const [other] = line?.alternatives ?? [];
  if (line === undefined || other === undefined) throw new Error("no line has an alternative");
  const chosen = computeReport({ child, choices: { [line.id]: other.id } }).linesOf(line.problem);
  expect(chosen.find(({ id }) => id === line.id)?.option.id).toBe(other.id);
  const others = (of: readonly SheetLine[]) =>
    of.filter(({ id, problem }) => problem === line.problem && id !== line.id);
  expect(others(chosen)).toEqual(others(lines));
});

test("a burn gets its fluid from what was typed, in its parts; without it the line says what is missing", () => {
  const child = weighed({ lengthCm: "107", armMm: "171" });
  const { burnPercent } = readBurn({
    texts: { ...emptyBedside.texts, burnPercent: "18,5 %" },
    typing: undefined,
  });
  expect(burnPercent).toBe(18.5);
  const burns = (report: ReturnType<typeof computeReport>) =>
    formularyIndex.problems
      .flatMap(({ problem }) => report.linesOf(problem))
      .filter((line) => line.unavailable?.type === "burn-percent-missing" || "portions" in line);
  const without = burns(computeReport({ child }));
  expect(without.length).toBeGreaterThan(0);
  expect(without.every((line) => line.unavailable?.type === "burn-percent-missing")).toBe(true);
  const withIt = burns(computeReport({ child, burnPercent }));
  expect(withIt.map(({ id }) => id)).toEqual(without.map(({ id }) => id));
  const library = computeChild({
    measurements: child.measurements,
    formulary: draftFormulary,
    burnPercent: 18.5,
  });
  for (const line of withIt) {
    expect(line.unavailable).toBeUndefined();
    const same = library.ok ? library.value.sheet.find(({ id }) => id === line.id) : undefined;
    expect("dose" in line && line.dose).toEqual(same && "dose" in same && same.dose);
  }
});

test("a burn that cannot be is said at its field once the fingers rest, and is not used", () => {
  const texts = { ...emptyBedside.texts, burnPercent: "140" };
  expect(readBurn({ texts, typing: "burnPercent" })).toEqual({ burnPercent: undefined, messages: [] });
  const { burnPercent, messages } = readBurn({ texts, typing: undefined });
  expect(burnPercent).toBeUndefined();
  expect(messages.map(({ field, kind }) => [field, kind])).toEqual([["burnPercent", "issue"]]);
  expect(messages[0]?.sentence).toContain("140");
});
