import { computeChild } from "@steelyard/core/child";
import type { DoseLine } from "@steelyard/core/dosing";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { doseToGive, dueAt } from "./due.ts";

describe("dueAt()", () => {
  const nextDue = { earliestMinutes: 3, latestMinutes: 5 };
  test.each([
    [0, { type: "in", seconds: 180 }],
    [2.5, { type: "in", seconds: 30 }],
    [2.9999, { type: "in", seconds: 1 }],
    [3, { type: "now" }],
    [5, { type: "now" }],
    [3.0001, { type: "now" }],
    [5.02, { type: "overdue", seconds: 1 }],
    [65, { type: "overdue", seconds: 3600 }],
  ])("at %d min", (now, due) => {
    expect(dueAt(nextDue, now)).toEqual(due);
  });
});

test("doseToGive() gives the later doses where they differ, the last of them for ever", () => {
  const measurements = { lengthCm: centimetres(107), armMm: millimetres(171) };
  const child = computeChild({ measurements, formulary: draftFormulary });
  if (!child.ok) throw new Error("no weight");
  const lines = child.value.sheet.filter((line): line is DoseLine => line.unavailable === undefined);
  const differing = lines.find(({ further }) => further.length > 0);
  if (differing === undefined) throw new Error("no line has further doses");
  expect(doseToGive(differing, 0).dose).toEqual(differing.dose);
  expect(doseToGive(differing, 1).dose).toEqual(differing.further[0]?.dose);
  expect(doseToGive(differing, 9).dose).toEqual(differing.further.at(-1)?.dose);
  const same = lines.find(({ further, volume }) => further.length === 0 && volume !== undefined);
  expect(same && doseToGive(same, 3).dose).toEqual(same?.dose);
});
