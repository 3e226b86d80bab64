import { type CaseEvent, type CaseEventDraft, foldCase } from "@steelyard/records/case";
import { describe, expect, test } from "vitest";
import { findCases, isWeightDue, percentOff, weightFault } from "./casebook.ts";

const caseId = "00000000-0000-4000-8000-00000000ca5e";
const estimate = { totalKg: 18, low95Kg: 16, high95Kg: 20, rests: ["lengthCm"] };

function record(...drafts: readonly CaseEventDraft[]) {
  const all: CaseEventDraft[] = [
    { type: "case-started", code: "K47-2TP" },
    { type: "measurement", measurements: { lengthCm: 107 } },
    { type: "estimate", estimate },
    ...drafts,
  ];
  return foldCase(
    all.map((draft, i) => ({
      format: 1,
      id: `00000000-0000-4000-8000-00000000000${i}`,
      caseId,
      at: `2026-11-25T03:12:0${i}.000Z`,
      versions: { software: "1", model: "1", formulary: "1", formularySigned: false },
      ...draft,
    })) as CaseEvent[],
  );
}

describe("the casebook", () => {
  const plain = record({ type: "note", text: "Pulse back" });
  const weighed = record({ type: "later-weight", kg: 20, on: "2026-11-26" });
  const deleted = record({ type: "deleted" });

  test("knows what waits for a weight, and how far an estimate was off", () => {
    expect([plain, weighed, deleted].map(isWeightDue)).toEqual([true, false, false]);
    expect(percentOff(weighed)).toBe(-10);
    expect(percentOff(plain)).toBeUndefined();
  });

  test("finds by filter and by every word", () => {
    const all = [plain, weighed, deleted];
    expect(findCases(all, { filter: "all", search: "" })).toEqual([plain, weighed]);
    expect(findCases(all, { filter: "due", search: "" })).toEqual([plain]);
    expect(findCases(all, { filter: "deleted", search: "k47" })).toEqual([deleted]);
    expect(findCases(all, { filter: "all", search: "pulse 2026-11-25" })).toEqual([plain]);
    expect(findCases(all, { filter: "all", search: "pulse 1999" })).toEqual([]);
  });

  test.each([
    [{ kg: 18.4, on: "2026-11-26" }, undefined],
    [{ kg: undefined, on: "2026-11-26" }, "kg"],
    [{ kg: 1840, on: "2026-11-26" }, "kg"],
    [{ kg: 18.4, on: "2026-11-20" }, "day"],
    [{ kg: 18.4, on: "2026-12-24" }, "day"],
    [{ kg: 18.4, on: "" }, "day"],
    [{ kg: 81.4, on: "2026-11-26" }, "unlikely"],
  ])("judges a later weight: %j", (typed, fault) => {
    expect(weightFault(plain, { ...typed, today: "2026-11-30" })).toBe(fault);
  });
});
