import { foldCase, readCaseEvent } from "@steelyard/records/case";
import { expect, test } from "vitest";
import { emptyBedside } from "./bedside-state.ts";
import { measured, secondReading } from "./case-facts.ts";
import { readBedside } from "./read-bedside.ts";

const texts = {
  ...emptyBedside.texts,
  lengthCm: "107",
  armMm: "171",
  sex: "f",
  ageMonths: "4 y",
  waistCm: "52",
  carerKg: "17",
  build: "thin",
  oedema: "no",
};

test("a child on Bedside becomes events that can be read back, with nothing typed in them but numbers and known words", () => {
  const { child } = readBedside({
    texts: { ...texts, lengthCm2: "1.08 m", armMm2: "172" },
    typing: undefined,
  });
  if (child === undefined) throw new Error("no weight");
  const head = { format: 1, caseId: "00000000-0000-4000-8000-000000000001", at: "2026-11-25T03:12:00.000Z" };
  const versions = { software: "1", model: "1", formulary: "1", formularySigned: false };
  const events = measured(child).map((draft, i) => {
    const read = readCaseEvent({
      ...head,
      id: `00000000-0000-4000-8000-00000000000${i}`,
      versions,
      ...draft,
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    return read.value;
  });
  const record = foldCase(events);
  expect(record.measurement?.measurements).toMatchObject({
    armMm: 171.5,
    sex: "f",
    ageMonths: 48,
    carerKg: 17,
  });
  expect(record.estimate?.estimate.totalKg).toBe(child.estimate.totalKg);
});

test("a second reading is read as at the bedside, units and comma and all", () => {
  expect(secondReading({ ...texts, lengthCm2: "1,08 m", armMm2: "172" })).toEqual({
    type: "second-reading",
    lengthCm: 108,
    armMm: 172,
  });
  expect(secondReading({ ...texts, lengthCm2: "x", armMm2: "172" })).toEqual({
    type: "second-reading",
    armMm: 172,
  });
  expect(secondReading({ ...texts })).toBeUndefined();
});
