import type { Store } from "../../store/store.ts";
import { syncProtocol } from "../wire/sync-protocol.ts";
import type { PullAnswer, PullRequest } from "../wire/sync-schema.ts";
import type { Sender } from "./accept-push.ts";

/**
 * What happened at the site since the cursor of a device. A cursor of another life of the store counts as 0. A pull that brings
 * something is a reading of cases, and the audit log says so.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStore } from "@steelyard/records/store";
 * import { answerPull } from "@steelyard/records/sync-server";
 *
 * const at = "2026-11-25T03:12:00.000Z";
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const store = await openStore({ database: { type: "sqlite", file: ":memory:" }, clock: () => at, newId });
 * const answer = await answerPull(store, { site: "resus", device: "d" }, { protocol: 1, since: 0, limit: 10 });
 * assert.equal(answer.more, false);
 * await store.close();
 * ```
 */
export async function answerPull(store: Store, sender: Sender, request: PullRequest): Promise<PullAnswer> {
  const since = request.epoch === undefined || request.epoch === store.epoch ? request.since : 0;
  const page = await store.readChanges({ site: sender.site, since, limit: request.limit });
  if (page.changes.length > 0) {
    await store.note({
      site: sender.site,
      actor: `device:${sender.device}`,
      action: "cases.read",
      subject: "changes",
      detail: { since, cursor: page.cursor },
    });
  }
  return { protocol: syncProtocol, epoch: store.epoch, serverAt: store.clock(), ...page };
}
