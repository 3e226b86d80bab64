import { type CaseEvent, type CaseRecord, foldCase, foldCases } from "@steelyard/records/case";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { adrenaline, anyEvents, event, sampleCase, uuid, versions } from "./sample-events.ts";

const runs = { seed: 20261125, numRuns: 500 };

/** What a case says, without the trace of how it came to be. */
function facts({ history: _, warnings: __, versions: ___, ...said }: CaseRecord): unknown {
  return said;
}

describe("foldCase()", () => {
  test("tells the sample case", () => {
    const record = foldCase(sampleCase);
    expect(record).toMatchObject({
      code: "K47-2TP",
      startedAt: "2026-11-25T03:12:00.000Z",
      closedAt: "2026-11-25T03:21:00.000Z",
      versions,
      warnings: [],
    });
    expect(record.doses.map(({ id, given }) => [id, given.dose.amount])).toEqual([
      [uuid(4), 180],
      [uuid(6), 180],
      [uuid(7), 72],
    ]);
    expect(record.laterWeight).toMatchObject({ kg: 18.4, on: "2026-11-27" });
    expect(record.history.filter(({ counts }) => !counts).map(({ event }) => event.id)).toEqual([uuid(5)]);
  });

  test("is the same for every order and any number of copies", () => {
    fc.assert(
      fc.property(
        anyEvents.chain((events) =>
          fc.tuple(
            fc.constant(events),
            fc.shuffledSubarray([...events], { minLength: events.length }),
            fc.shuffledSubarray([...events]),
          ),
        ),
        ([events, shuffled, copies]) => {
          const again = [...copies.map((copy) => structuredClone(copy)), ...shuffled];
          expect(foldCase(again)).toEqual(foldCase(events));
        },
      ),
      runs,
    );
  });

  test("an undo takes one event away, and undoing the undo restores what was", () => {
    fc.assert(
      fc.property(anyEvents, fc.nat(), (events, pick) => {
        const before = foldCase(events);
        const counting = before.history.filter(({ counts }) => counts);
        const target = counting[pick % Math.max(1, counting.length)]?.event;
        if (target === undefined) return;
        const undo = event(100, 70, { type: "undo", target: target.id });
        const without = foldCase([...events, undo]);
        expect(without.history.find(({ event }) => event.id === target.id)?.counts).toBe(false);
        const redo = event(101, 71, { type: "undo", target: undo.id });
        expect(facts(foldCase([...events, undo, redo]))).toEqual(facts(before));
      }),
      runs,
    );
  });

  test("an undo counts where its device's clock is behind, and a correction of a correction is the last word", () => {
    const given = event(1, 30, { type: "dose-given", given: adrenaline });
    expect(foldCase([given, event(2, -30, { type: "undo", target: given.id })]).doses).toEqual([]);
    const second = event(3, 31, { type: "dose-given", given: adrenaline, replaces: given.id });
    const third = event(4, 32, { type: "dose-given", given: adrenaline, replaces: second.id });
    expect(foldCase([third, given, second]).doses.map(({ id }) => id)).toEqual([third.id]);
  });

  test("a ring of undos ends, and ends alike everywhere", () => {
    const ring = [0, 1, 2].map((n) => event(n, n, { type: "undo", target: uuid((n + 1) % 3) }));
    expect(foldCase(ring)).toEqual(foldCase(ring.toReversed()));
  });

  test("a chain of ten thousand undos does not end the program", () => {
    const chain: CaseEvent[] = Array.from({ length: 10_000 }, (_, n) =>
      n === 0
        ? event(0, 0, { type: "note", text: "here" })
        : event(n, n, { type: "undo", target: uuid(n - 1) }),
    );
    expect(foldCase(chain).notes.length).toBe(0);
    expect(foldCase(chain.slice(0, -1)).notes.length).toBe(1);
  });

  test("says what is missing or doubled under one id", () => {
    const note = event(1, 0, { type: "note", text: "b" });
    const other = event(1, 0, { type: "note", text: "a" });
    const record = foldCase([note, other, event(2, 1, { type: "undo", target: uuid(9) })]);
    expect(record.warnings).toEqual([
      { type: "conflicting-id", id: uuid(1) },
      { type: "start-missing" },
      { type: "target-missing", id: uuid(2), target: uuid(9) },
    ]);
    expect(record.notes[0]?.text).toBe("a");
  });

  test("throws on no event and on events of two cases", () => {
    expect(() => foldCase([])).toThrow(RangeError);
    const [one, two] = sampleCase as [CaseEvent, CaseEvent];
    expect(() => foldCase([one, { ...two, caseId: uuid(7) }])).toThrow(RangeError);
  });
});

test("foldCases() gives every case, the latest first", () => {
  const later = sampleCase.map((one) => ({
    ...one,
    id: one.id.replace(/^0/, "1"),
    caseId: uuid(8),
    at: one.at.replace("2026-11-25", "2026-11-26"),
  })) as CaseEvent[];
  expect(foldCases([...sampleCase, ...later]).map((record) => record.caseId)).toEqual([
    uuid(8),
    foldCase(sampleCase).caseId,
  ]);
});
