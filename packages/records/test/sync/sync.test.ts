import { randomUUID } from "node:crypto";
import type { Store } from "@steelyard/records/store";
import { openStore } from "@steelyard/records/store";
import {
  collected,
  newSyncState,
  nextSyncStep,
  pullAnswered,
  pushAnswered,
  pushRequestSchema,
  recorded,
  resumeSync,
  syncFailed,
} from "@steelyard/records/sync";
import { acceptPush, answerPull } from "@steelyard/records/sync-server";
import * as v from "valibot";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { event, sampleCase, uuid } from "../case/sample-events.ts";

const sentAt = "2026-11-25T03:00:00.000Z";
const sender = { site: "resus", device: "tablet" };
const push = (events: readonly unknown[]) => ({ protocol: 1, sentAt, events }) as const;

describe("the server", () => {
  let store: Store;
  beforeEach(async () => {
    const clock = () => "2026-11-25T04:00:00.000Z";
    store = await openStore({ database: { type: "sqlite", file: ":memory:" }, clock, newId: randomUUID });
    await store.addSite("resus");
  });
  afterEach(() => store.close());

  it("keeps what is whole, and sends back what is not with its place and reason", async () => {
    const note = event(1, 0, { type: "note", text: "in" });
    const events = [
      { ...note, id: uuid(2), format: 2, later: { part: "of a later version" } },
      note,
      { ...note, id: uuid(3), text: "" },
      { ...note, text: "another under the same id" },
      { ...note, id: uuid(4), type: "cloud" },
      "nothing",
    ];
    const answer = await acceptPush(store, sender, push(events));
    expect(answer).toMatchObject({ acknowledged: [note.id], skewMs: -3_600_000 });
    expect(answer.refused).toEqual([
      { place: 0, reason: { type: "faulty", faults: [{ type: "unknown-format", format: "2" }] } },
      {
        place: 2,
        reason: {
          type: "faulty",
          faults: [{ type: "faulty-part", path: "text", reason: "must not be empty" }],
        },
      },
      { place: 3, reason: { type: "id-taken" } },
      { place: 4, reason: { type: "faulty", faults: [{ type: "unknown-event", event: "cloud" }] } },
      { place: 5, reason: { type: "faulty", faults: [{ type: "not-an-object" }] } },
    ]);
  });

  it("answers a cursor of another life of the store from the beginning", async () => {
    await acceptPush(store, sender, push(sampleCase));
    const ask = { protocol: 1, since: 11, limit: 500 } as const;
    expect((await answerPull(store, sender, { ...ask, epoch: store.epoch })).changes).toHaveLength(0);
    expect((await answerPull(store, sender, { ...ask, epoch: uuid(99) })).changes).toHaveLength(11);
  });

  it("logs who read cases, once for each answer that held any", async () => {
    await acceptPush(store, sender, push(sampleCase));
    const ask = { protocol: 1, limit: 500, epoch: store.epoch } as const;
    await answerPull(store, sender, { ...ask, since: 0 });
    await answerPull(store, sender, { ...ask, since: 11 });
    const actions = (await store.readAudit({ site: "resus", limit: 9 })).map(({ actor, action }) => [
      actor,
      action,
    ]);
    expect(actions).toEqual([
      ["device:tablet", "cases.read"],
      ["device:tablet", "cases.append"],
    ]);
  });

  it("reads only a push that it knows every word of", () => {
    for (const wrong of [
      { ...push([]), protocol: 0 },
      { ...push([]), sentAt: "yesterday" },
      { ...push([]), extra: 1 },
      push(Array.from({ length: 201 }, () => 1)),
    ]) {
      expect(v.safeParse(pushRequestSchema, wrong).success).toBe(false);
    }
    expect(v.safeParse(pushRequestSchema, push([1])).success).toBe(true);
  });
});

describe("the device", () => {
  const one = event(1, 0, { type: "note", text: "one" });
  const two = event(2, 0, { type: "note", text: "two" });
  const ready = collected(newSyncState, [one, two]);
  const answer = { protocol: 1, epoch: uuid(9), serverAt: sentAt, skewMs: 0, refused: [] } as const;

  it("keeps what an answer does not name", () => {
    const after = pushAnswered(ready, push([one, two]), { ...answer, acknowledged: [one.id] });
    expect(after.waiting).toEqual([two]);
    const step = nextSyncStep(after, 0);
    expect(step.type === "push" && step.request.events).toEqual([two]);
  });

  it("keeps a refused event with its reason and does not send it again by itself", () => {
    const reason = { type: "id-taken" } as const;
    const after = pushAnswered(ready, push([one, two]), {
      ...answer,
      acknowledged: [two.id],
      refused: [{ place: 0, reason }],
    });
    expect(after.refused).toEqual([{ event: one, reason }]);
    expect(nextSyncStep(after, 0).type).toBe("pull");
    expect(recorded(after, [one])).toBe(after);
    expect(collected(after, [one, two]).waiting).toEqual([one, two]);
  });

  it("waits longer after each failure, at most five minutes, and halts where a person must act", () => {
    let state = ready;
    const waits = Array.from({ length: 12 }, () => {
      state = syncFailed(state, { failure: "unreachable", nowMs: 0, chance: 0.999 });
      return state.notBeforeMs;
    });
    expect(waits[1]).toBeGreaterThan(waits[0] ?? 0);
    expect(waits.at(-1)).toBeLessThanOrEqual(300_000);
    expect(nextSyncStep(state, 0)).toEqual({ type: "wait", untilMs: state.notBeforeMs });
    expect(nextSyncStep(state, state.notBeforeMs).type).toBe("push");
    const halted = syncFailed(state, { failure: "not-enrolled", nowMs: 0, chance: 0 });
    expect(nextSyncStep(halted, 1e12)).toEqual({ type: "halted", why: "not-enrolled" });
    expect(halted.waiting).toEqual([one, two]);
    expect(nextSyncStep(resumeSync(halted), 0).type).toBe("push");
  });

  it("passes over a pull that was overtaken, as it may hold a case that was purged since", () => {
    const ask = { protocol: 1, since: 0, limit: 500 } as const;
    const page = { protocol: 1, epoch: uuid(9), serverAt: sentAt, cursor: 3, more: false } as const;
    const early = { ...page, changes: [{ cursor: 1, event: one }] };
    const late = { ...page, changes: [{ cursor: 3, purgedCaseId: one.caseId }] };
    const after = pullAnswered(ready, ask, late);
    expect(after.purgedCaseIds).toEqual([one.caseId]);
    expect(pullAnswered(after.state, ask, early)).toEqual({
      state: after.state,
      events: [],
      purgedCaseIds: [],
    });
    expect(pullAnswered(ready, ask, early).events).toEqual([one]);
  });

  it("offers everything again to a store that was restored", () => {
    const done = pushAnswered(ready, push([one, two]), { ...answer, acknowledged: [one.id, two.id] });
    expect(done.mustCollect).toBe(false);
    const restored = pushAnswered(done, push([]), { ...answer, epoch: uuid(10), acknowledged: [] });
    expect(restored).toMatchObject({ mustCollect: true, cursor: 0, epoch: uuid(10) });
  });
});
