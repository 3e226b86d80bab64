import { type CaseEvent, type CaseEventDraft, eventFormat } from "@steelyard/records/case";
import fc from "fast-check";

export const versions = {
  software: "0.1.0",
  model: "2026.1",
  formulary: "2026-11-25",
  formularySigned: false,
};
const caseId = uuid(0xca5e);

export function uuid(n: number): string {
  return `00000000-0000-4000-8000-${n.toString(16).padStart(12, "0")}`;
}

/** An event of the sample case, `minutes` after 03:12. */
export function event(n: number, minutes: number, draft: CaseEventDraft): CaseEvent {
  const at = new Date(Date.parse("2026-11-25T03:12:00.000Z") + minutes * 60_000).toISOString();
  return { format: eventFormat, id: uuid(n), caseId, at, versions, ...draft } as CaseEvent;
}

export const adrenaline = {
  lineId: "adrenaline.arrest",
  medicine: "Adrenaline",
  use: "cardiac arrest",
  route: "intravenous",
  dose: { amount: 180, unit: "microgram" },
  volume: { ml: 1.8, strength: "0.1 mg/mL" },
} as const;

/** An invented child, a whole case with a correction and a later weight. */
export const sampleCase: readonly CaseEvent[] = [
  event(1, 0, { type: "case-started", code: "K47-2TP" }),
  event(2, 0, {
    type: "measurement",
    measurements: {
      lengthCm: 107.5,
      armMm: 171,
      waistCm: 52,
      sex: "f",
      ageMonths: 58,
      carerKg: 17,
      oedema: false,
      posture: "lying",
    },
  }),
  event(3, 0, {
    type: "estimate",
    estimate: { totalKg: 18.02, low95Kg: 15.7, high95Kg: 20.6, idealKg: 17.6, rests: ["lengthCm", "armMm"] },
  }),
  event(4, 1, { type: "dose-given", given: adrenaline, by: "RN 2" }),
  event(5, 5, { type: "dose-given", given: { ...adrenaline, dose: { amount: 18, unit: "microgram" } } }),
  event(6, 5.5, { type: "dose-given", given: adrenaline, replaces: uuid(5) }),
  event(7, 6, {
    type: "dose-given",
    given: {
      ...adrenaline,
      lineId: "defibrillation.shock",
      medicine: "Defibrillation",
      use: "shock",
      route: "external",
      dose: { amount: 72, unit: "J" },
    },
  }),
  event(8, 7, { type: "second-reading", lengthCm: 107, armMm: 172, by: "Dr 1" }),
  event(9, 8, { type: "note", text: "Pulse back, 03:20" }),
  event(10, 9, { type: "closed" }),
  event(11, 4000, { type: "later-weight", kg: 18.4, on: "2026-11-27" }),
];

const drafts: fc.Arbitrary<CaseEventDraft> = fc.oneof(
  fc.record({ type: fc.constant("note" as const), text: fc.string({ minLength: 1, maxLength: 40 }) }),
  fc.record({
    type: fc.constant("later-weight" as const),
    kg: fc.double({ min: 1, max: 90, noNaN: true }),
    on: fc.constant("2026-11-27"),
  }),
  fc.record({ type: fc.constant("dose-given" as const), given: fc.constant(adrenaline) }),
  fc.record({
    type: fc.constant("measurement" as const),
    measurements: fc.record({ lengthCm: fc.double({ min: 45, max: 190, noNaN: true }) }),
  }),
  fc.constant({ type: "closed" as const }),
  fc.constant({ type: "deleted" as const }),
  fc.nat({ max: 14 }).map((target) => ({ type: "undo" as const, target: uuid(target) })),
);

/** Events of one case, undos of one another and of nothing among them, clocks running as they like. */
export const anyEvents: fc.Arbitrary<readonly CaseEvent[]> = fc
  .array(
    fc.record({
      draft: drafts,
      minutes: fc.integer({ min: -5, max: 60 }),
      replaces: fc.option(fc.nat({ max: 14 })),
    }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((list) =>
    list.map(({ draft, minutes, replaces }, i) =>
      event(
        i,
        minutes,
        replaces === null || replaces === i
          ? draft
          : ({ ...draft, replaces: uuid(replaces) } as CaseEventDraft),
      ),
    ),
  );
