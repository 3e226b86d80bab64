import {
  type CaseEvent,
  type CaseEventDraft,
  eventFormat,
  foldCase,
  writeStudyRows,
} from "@steelyard/records/case";
import { importStudy, openStudyFile } from "@steelyard/study/import";
import { expect, it } from "vitest";

const versions = { software: "0.1.0", model: "2", formulary: "draft 0.1", formularySigned: false };

function event(n: number, draft: CaseEventDraft): CaseEvent {
  const id = (of: number): string => `00000000-0000-4000-8000-${String(of).padStart(12, "0")}`;
  const at = `2026-11-25T03:12:0${n}.000Z`;
  return { format: eventFormat, id: id(n), caseId: id(0), at, versions, ...draft } as CaseEvent;
}

it("what the casebook exports for a study is read by the study as it stands", async () => {
  const record = foldCase([
    event(1, { type: "case-started", code: "K47-2TP" }),
    event(2, {
      type: "measurement",
      measurements: { lengthCm: 107.5, armMm: 171, waistCm: 52, sex: "f", ageMonths: 58, carerKg: 17 },
    }),
    event(3, {
      type: "estimate",
      estimate: {
        totalKg: 18.02,
        low95Kg: 15.7,
        high95Kg: 20.6,
        idealKg: 17.6,
        rests: ["lengthCm", "armMm"],
      },
    }),
    event(4, { type: "later-weight", kg: 17.6, on: "2026-11-27" }),
  ]);
  const file = await openStudyFile(new TextEncoder().encode(writeStudyRows([record])));
  if (!file.ok) throw new Error(file.error.type);
  const study = importStudy(file.value);
  if (!study.ok) throw new Error(study.error.type);
  const { table, flow, mapping } = study.value;
  expect([flow.read, flow.included]).toEqual([1, 1]);
  const read = (name: string): number | undefined => table.numbers.get(name)?.[0];
  expect(["lengthCm", "armMm", "waistCm", "ageMonths", "carerKg", "weightKg"].map(read)).toEqual([
    107.5, 171, 52, 58, 17, 17.6,
  ]);
  const estimates = mapping.filter(({ role }) => role.type === "estimate");
  expect(estimates.map(({ column }) => column)).toEqual(["total_kg", "ideal_kg"]);
});
