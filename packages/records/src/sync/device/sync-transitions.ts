import type { CaseEvent } from "../../case/case-event.ts";
import type { PullAnswer, PullRequest, PushAnswer, PushRequest } from "../wire/sync-schema.ts";
import type { SyncState } from "./sync-state.ts";

/** First wait after a failure, doubled with each one more, up to the longest. */
const SHORTEST_WAIT_MS = 1_000;
const LONGEST_WAIT_MS = 5 * 60_000;

/**
 * The state after an event was made on this device.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, recorded } from "@steelyard/records/sync";
 *
 * assert.equal(recorded(newSyncState, []).waiting.length, 0);
 * ```
 */
export function recorded(state: SyncState, events: readonly CaseEvent[]): SyncState {
  const known = new Set([...state.waiting, ...state.refused.map(({ event }) => event)].map(({ id }) => id));
  const fresh = events.filter(({ id }) => !known.has(id) && known.add(id));
  return fresh.length === 0 ? state : { ...state, waiting: [...state.waiting, ...fresh] };
}

/** Nothing is remembered. */
const none: ReadonlyMap<string, string> = new Map();

/**
 * The state after a step `collect`: `events` are all that the device holds, from wherever. What was refused is offered again; what
 * `acknowledged` remembers under the epoch of the state (by the id of the event, from the answers to pushes alone) is not. A device may
 * forget any of that, but must not remember it past another link.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { collected, newSyncState } from "@steelyard/records/sync";
 *
 * assert.equal(collected(newSyncState, []).mustCollect, false);
 * ```
 */
export function collected(
  state: SyncState,
  events: readonly CaseEvent[],
  acknowledged: ReadonlyMap<string, string> = none,
): SyncState {
  const again = state.refused.map(({ event }) => event);
  const isKnown = (id: string): boolean => state.epoch !== undefined && acknowledged.get(id) === state.epoch;
  const refusedIds = new Set(again.map(({ id }) => id));
  // Of two events under one id, the one that this device made is offered.
  const others = events.filter(({ id }) => !refusedIds.has(id) && !isKnown(id));
  return recorded({ ...state, refused: [], mustCollect: false }, [...again, ...others]);
}

/**
 * The state after the answer to a push. Only what the answer names is done with; the rest waits on. A late or second answer does no harm.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, pushAnswered } from "@steelyard/records/sync";
 *
 * const epoch = "00000000-0000-4000-8000-000000000001";
 * const serverAt = "2026-11-25T03:12:00.000Z";
 * const answer = { protocol: 1, epoch, serverAt, skewMs: 0, acknowledged: [], refused: [] } as const;
 * const request = { protocol: 1, sentAt: serverAt, events: [] } as const;
 * assert.equal(pushAnswered(newSyncState, request, answer).epoch, epoch);
 * ```
 */
export function pushAnswered(state: SyncState, request: PushRequest, answer: PushAnswer): SyncState {
  const now = reached(state, answer.epoch);
  // An answer of an earlier life of the store acknowledges nothing in this one; that life said `mustCollect`.
  const done = new Set(answer.acknowledged);
  const sent = request.events as readonly CaseEvent[];
  const refused = answer.refused.flatMap(({ place, reason }) => {
    const event = now.waiting.find(({ id }) => id === sent[place]?.id);
    return event === undefined || done.has(event.id) ? [] : [{ event, reason }];
  });
  for (const { event } of refused) done.add(event.id);
  return {
    ...now,
    skewMs: answer.skewMs,
    mustPull: true,
    waiting: now.waiting.filter(({ id }) => !done.has(id)),
    refused: [...now.refused, ...refused],
  };
}

/**
 * The state after the answer to a pull, with what is new on this device: add `events`, drop the cases `purgedCaseIds`.
 * An answer that comes after the state went on is passed over: it may hold a case that has been purged since.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, pullAnswered } from "@steelyard/records/sync";
 *
 * const epoch = "00000000-0000-4000-8000-000000000001";
 * const serverAt = "2026-11-25T03:12:00.000Z";
 * const answer = { protocol: 1, epoch, serverAt, changes: [], cursor: 7, more: false } as const;
 * const request = { protocol: 1, since: 0, limit: 10 } as const;
 * assert.equal(pullAnswered(newSyncState, request, answer).state.cursor, 7);
 * ```
 */
export function pullAnswered(
  state: SyncState,
  request: PullRequest,
  answer: PullAnswer,
): {
  readonly state: SyncState;
  readonly events: readonly CaseEvent[];
  readonly purgedCaseIds: readonly string[];
} {
  if (request.since !== state.cursor || request.epoch !== state.epoch) {
    return { state, events: [], purgedCaseIds: [] };
  }
  const now = reached(state, answer.epoch);
  const purged = new Set(answer.changes.flatMap((c) => ("purgedCaseId" in c ? [c.purgedCaseId] : [])));
  return {
    state: {
      ...now,
      cursor: Math.max(now.cursor, answer.cursor),
      mustPull: answer.more,
    },
    events: answer.changes.flatMap((change) =>
      "event" in change && !purged.has(change.event.caseId) ? [change.event] : [],
    ),
    purgedCaseIds: [...purged],
  };
}

/** Another epoch: the store was restored from a backup, and may lack what it had acknowledged. */
function reached(state: SyncState, epoch: string): SyncState {
  const calm = { ...state, failures: 0, notBeforeMs: 0 };
  if (state.epoch === epoch) return calm;
  const isFirst = state.epoch === undefined;
  return { ...calm, epoch, cursor: 0, mustPull: true, mustCollect: state.mustCollect || !isFirst };
}

export type SyncFailure =
  /** No answer, or one that says "later". */
  | "unreachable"
  /** The token is not known, or not any more. */
  | "not-enrolled"
  /** The server does not speak this protocol. */
  | "update-needed";

/**
 * The state after a push or pull without a usable answer. `chance` in [0, 1) spreads devices that failed together.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, syncFailed } from "@steelyard/records/sync";
 *
 * const after = syncFailed(newSyncState, { failure: "unreachable", nowMs: 0, chance: 0 });
 * assert.equal(after.notBeforeMs, 500);
 * ```
 */
export function syncFailed(
  state: SyncState,
  {
    failure,
    nowMs,
    chance,
  }: { readonly failure: SyncFailure; readonly nowMs: number; readonly chance: number },
): SyncState {
  if (failure !== "unreachable") return { ...state, halted: failure };
  const longestMs = Math.min(SHORTEST_WAIT_MS * 2 ** state.failures, LONGEST_WAIT_MS);
  return {
    ...state,
    failures: state.failures + 1,
    notBeforeMs: nowMs + longestMs * (0.5 + chance / 2),
  };
}

/**
 * The state after a person acted on a halt (enrolled, updated) or asked to try now; after an update everything is pulled
 * again, as an earlier version may have passed over events that it could not read.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, resumeSync } from "@steelyard/records/sync";
 *
 * assert.equal(resumeSync({ ...newSyncState, cursor: 9, halted: "update-needed" }).cursor, 0);
 * ```
 */
export function resumeSync({ halted, ...state }: SyncState): SyncState {
  const from = halted === "update-needed" ? { cursor: 0 } : {};
  return { ...state, ...from, failures: 0, notBeforeMs: 0, mustPull: true };
}
