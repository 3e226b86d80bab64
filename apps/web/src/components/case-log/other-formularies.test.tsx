import type { TrackedDoses } from "@steelyard/core/dosing";
import { type CaseEvent, eventFormat, foldCase } from "@steelyard/records/case";
import { render } from "preact-render-to-string";
import { expect, test } from "vitest";
import { OtherFormularies } from "./other-formularies.tsx";

const uuid = (n: number): string => `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`;
const none: TrackedDoses = { lines: [], warnings: [] };

function dose(n: number, lineId: string, formulary: string): CaseEvent {
  return {
    format: eventFormat,
    id: uuid(n),
    caseId: uuid(0),
    at: `2026-11-25T03:1${n}:00.000Z`,
    versions: { software: "0.1.0", model: "m", formulary, formularySigned: true },
    type: "dose-given",
    given: {
      lineId,
      medicine: "amiodarone",
      use: "shockable rhythm",
      route: "intravenous",
      dose: { amount: 90, unit: "mg" },
    },
  };
}

test("says nothing where every dose was marked by the formulary in use", () => {
  const record = foldCase([dose(1, "amiodarone.arrest", "ours 2")]);
  expect(render(<OtherFormularies record={record} tracked={none} now="ours 2" />)).toBe("");
});

test("counts the doses of other formularies, and names those that are followed no more", () => {
  const record = foldCase([dose(1, "amiodarone.arrest", "ours 1"), dose(2, "amiodarone.arrest", "ours 1")]);
  const tracked: TrackedDoses = {
    lines: [],
    warnings: [{ type: "unknown-line", lineId: "amiodarone.arrest", atMinutes: 0 }],
  };
  const text = render(<OtherFormularies record={record} tracked={tracked} now="ours 2" />);
  expect(text).toContain("2 doses were marked by the formulary ours 1. Maxima");
  expect(text.match(/amiodarone, shockable rhythm: 90\smg, intravenous: the formulary in use/g)).toHaveLength(
    2,
  );
});
