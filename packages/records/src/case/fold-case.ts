import type { CaseEvent, CaseEventOf, CaseEventType, EventVersions } from "./case-event.ts";
import { eventsInForce } from "./events-in-force.ts";
import { orderEvents } from "./order-events.ts";

/** A case as its events tell it. What was taken back is in `history` only. */
export interface CaseRecord {
  readonly caseId: string;
  /** What people call it by; empty where its start has not arrived. */
  readonly code: string;
  readonly startedAt: string;
  readonly closedAt?: string;
  readonly deletedAt?: string;
  /** The last ones; every one is in `history`. */
  readonly measurement?: CaseEventOf<"measurement">;
  readonly estimate?: CaseEventOf<"estimate">;
  readonly secondReadings: readonly CaseEventOf<"second-reading">[];
  readonly doses: readonly CaseEventOf<"dose-given">[];
  readonly notes: readonly CaseEventOf<"note">[];
  readonly laterWeight?: CaseEventOf<"later-weight">;
  /** Of the estimate, or of the last event before there is one. */
  readonly versions: EventVersions;
  readonly history: readonly { readonly event: CaseEvent; readonly counts: boolean }[];
  readonly warnings: readonly CaseWarning[];
}

export type CaseWarning =
  /** Two different events came under one id. */
  | { readonly type: "conflicting-id"; readonly id: string }
  /** Its first event has not arrived. */
  | { readonly type: "start-missing" }
  /** Something was taken back that has not arrived. */
  | { readonly type: "target-missing"; readonly id: string; readonly target: string };

/**
 * One case from its events.
 *
 * The result is the same for the same events in any order and any number of copies. Throws a `RangeError` where there
 * is no event, or events of more than one case.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { foldCase, type CaseEvent } from "@steelyard/records/case";
 *
 * const versions = { software: "0.1.0", model: "m", formulary: "f", formularySigned: false };
 * const caseId = "00000000-0000-4000-8000-000000000001";
 * const head = { format: 1, caseId, at: "2026-11-25T03:12:00.000Z", versions } as const;
 * const start: CaseEvent = { ...head, id: "00000000-0000-4000-8000-000000000002", type: "case-started", code: "K47-2TP" };
 * const note: CaseEvent = { ...head, id: "00000000-0000-4000-8000-000000000003", type: "note", text: "asystole" };
 * assert.equal(foldCase([note, start, note]).notes.length, 1);
 * ```
 */
export function foldCase(events: readonly CaseEvent[]): CaseRecord {
  const { events: ordered, conflictingIds } = orderEvents(events);
  const first = ordered[0];
  if (first === undefined) throw new RangeError("Cannot fold a case as it must have an event: there is none");
  const { caseId } = first;
  const stranger = ordered.find((event) => event.caseId !== caseId);
  if (stranger !== undefined) {
    throw new RangeError(
      `Cannot fold a case as its events must be of ${caseId}: current value is ${stranger.caseId}`,
    );
  }
  const inForce = eventsInForce(ordered);
  const counting = ordered.filter(({ id }) => inForce.has(id));
  const of = <T extends CaseEventType>(type: T): readonly CaseEventOf<T>[] =>
    counting.filter(
      (event): event is Extract<CaseEvent, { type: T }> & CaseEventOf<T> => event.type === type,
    );

  const started = of("case-started")[0];
  const [measurement, estimate] = [of("measurement").at(-1), of("estimate").at(-1)];
  const [closed, deleted, laterWeight] = [
    of("closed").at(-1),
    of("deleted").at(-1),
    of("later-weight").at(-1),
  ];
  return {
    caseId,
    code: started?.code ?? "",
    startedAt: (started ?? first).at,
    ...(closed && { closedAt: closed.at }),
    ...(deleted && { deletedAt: deleted.at }),
    ...(measurement && { measurement }),
    ...(estimate && { estimate }),
    secondReadings: of("second-reading"),
    doses: of("dose-given"),
    notes: of("note"),
    ...(laterWeight && { laterWeight }),
    versions: (estimate ?? counting.at(-1) ?? first).versions,
    history: ordered.map((event) => ({ event, counts: inForce.has(event.id) })),
    warnings: [
      ...conflictingIds.map((id): CaseWarning => ({ type: "conflicting-id", id })),
      ...(ordered.some(({ type }) => type === "case-started") ? [] : [{ type: "start-missing" } as const]),
      ...missingTargets(ordered),
    ],
  };
}

function missingTargets(events: readonly CaseEvent[]): readonly CaseWarning[] {
  const ids = new Set(events.map(({ id }) => id));
  return events.flatMap((event) =>
    [event.replaces, event.type === "undo" ? event.target : undefined]
      .filter((target): target is string => target !== undefined && !ids.has(target))
      .map((target): CaseWarning => ({ type: "target-missing", id: event.id, target })),
  );
}

/**
 * Every case that events tell of, the latest first.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { foldCases } from "@steelyard/records/case";
 *
 * assert.deepEqual(foldCases([]), []);
 * ```
 */
export function foldCases(events: readonly CaseEvent[]): readonly CaseRecord[] {
  const byCase = new Map<string, CaseEvent[]>();
  for (const event of events) {
    const known = byCase.get(event.caseId);
    if (known === undefined) byCase.set(event.caseId, [event]);
    else known.push(event);
  }
  return [...byCase.values()].map(foldCase).sort((a, b) => {
    if (a.startedAt !== b.startedAt) return a.startedAt < b.startedAt ? 1 : -1;
    return a.caseId < b.caseId ? -1 : 1;
  });
}
