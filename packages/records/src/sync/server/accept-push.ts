import type { CaseEvent } from "../../case/case-event.ts";
import { type EventFault, readCaseEvent } from "../../case/read-case-event.ts";
import type { Store } from "../../store/store.ts";
import { syncProtocol } from "../wire/sync-protocol.ts";
import type { PushAnswer, PushRequest, SentFault } from "../wire/sync-schema.ts";

/** Who sends, as the server found by the token. */
export interface Sender {
  readonly site: string;
  /** Id of the device. */
  readonly device: string;
}

type Refused = PushAnswer["refused"][number];

/**
 * Stores what a device sends and gives the answer, only after the commit. Each event is judged by itself: what cannot
 * be read, has its id taken or belongs to a purged case comes back with its reason, the others are kept.
 *
 * Rejects where the store cannot write; then nothing was acknowledged and the device sends again.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStore } from "@steelyard/records/store";
 * import { acceptPush } from "@steelyard/records/sync-server";
 *
 * const at = "2026-11-25T03:12:00.000Z";
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const store = await openStore({ database: { type: "sqlite", file: ":memory:" }, clock: () => at, newId });
 * await store.addSite("resus");
 * const sender = { site: "resus", device: "tablet" };
 * const answer = await acceptPush(store, sender, { protocol: 1, sentAt: at, events: [42] });
 * assert.deepEqual(answer.refused, [
 *   { place: 0, reason: { type: "faulty", faults: [{ type: "not-an-object" }] } },
 * ]);
 * await store.close();
 * ```
 */
export async function acceptPush(store: Store, sender: Sender, request: PushRequest): Promise<PushAnswer> {
  const serverAt = store.clock();
  const skewMs = Date.parse(request.sentAt) - Date.parse(serverAt);
  const read = request.events.map((value, place) => ({ place, result: readCaseEvent(value) }));
  const whole: { place: number; event: CaseEvent }[] = [];
  const refused: Refused[] = [];
  for (const { place, result } of read) {
    if (result.ok) whole.push({ place, event: result.value });
    else refused.push({ place, reason: { type: "faulty", faults: result.error.map(sendableFault) } });
  }
  const outcomes = await store.appendEvents({
    site: sender.site,
    device: sender.device,
    actor: `device:${sender.device}`,
    events: whole.map(({ event }) => event),
    skewMs,
  });
  const acknowledged: string[] = [];
  outcomes.forEach(({ id, outcome }, i) => {
    if (outcome === "stored" || outcome === "known") acknowledged.push(id);
    else refused.push({ place: whole[i]?.place ?? i, reason: { type: outcome } });
  });
  return {
    protocol: syncProtocol,
    epoch: store.epoch,
    serverAt,
    skewMs,
    acknowledged: [...new Set(acknowledged)],
    refused: refused.sort((a, b) => a.place - b.place),
  };
}

/** Short, and with nothing of unknown shape in it. */
function sendableFault(fault: EventFault): SentFault {
  if (fault.type === "unknown-format") {
    return { type: fault.type, format: String(JSON.stringify(fault.format) ?? "none").slice(0, 60) };
  }
  if (fault.type === "faulty-part") {
    return { ...fault, path: fault.path.slice(0, 200), reason: fault.reason.slice(0, 200) };
  }
  return fault;
}
