import { longestPull, longestPush, syncProtocol } from "../wire/sync-protocol.ts";
import type { PullRequest, PushRequest } from "../wire/sync-schema.ts";
import type { SyncState } from "./sync-state.ts";

export type SyncStep =
  /** Hand every event of the device to `collected`. */
  | { readonly type: "collect" }
  | { readonly type: "push"; readonly request: PushRequest }
  | { readonly type: "pull"; readonly request: PullRequest }
  /** Ask again at this time. */
  | { readonly type: "wait"; readonly untilMs: number }
  | { readonly type: "halted"; readonly why: NonNullable<SyncState["halted"]> }
  /** All is acknowledged and everything pulled: ask when an event is made, and now and then. */
  | { readonly type: "idle" };

/**
 * What the device has to do now to exchange events with its server; `nowMs` is its own clock since 1970.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { newSyncState, nextSyncStep } from "@steelyard/records/sync";
 *
 * assert.deepEqual(nextSyncStep(newSyncState, 0), { type: "collect" });
 * ```
 */
export function nextSyncStep(state: SyncState, nowMs: number): SyncStep {
  if (state.halted !== undefined) return { type: "halted", why: state.halted };
  if (state.mustCollect) return { type: "collect" };
  if (nowMs < state.notBeforeMs) return { type: "wait", untilMs: state.notBeforeMs };
  if (state.waiting.length > 0) {
    const events = state.waiting.slice(0, longestPush);
    return {
      type: "push",
      request: { protocol: syncProtocol, sentAt: new Date(nowMs).toISOString(), events },
    };
  }
  if (!state.mustPull) return { type: "idle" };
  return {
    type: "pull",
    request: {
      protocol: syncProtocol,
      since: state.cursor,
      limit: longestPull,
      ...(state.epoch === undefined ? {} : { epoch: state.epoch }),
    },
  };
}
