import type { Kysely } from "kysely";
import { canonicalText } from "../case/canonical-text.ts";
import type { CaseEvent } from "../case/case-event.ts";
import { sha256 } from "./audit-hash.ts";
import { refreshSummaries } from "./case-summaries.ts";
import { type LockedSite, withSiteLocked } from "./site-lock.ts";
import type { CaseEventRow, Tables } from "./tables.ts";

export interface AppendRequest {
  readonly site: string;
  /** Id of the device, or another word for where the events come from. */
  readonly device: string;
  readonly actor: string;
  readonly events: readonly CaseEvent[];
  /** Clock of the device minus clock of the server. */
  readonly skewMs?: number;
}

/** What became of one event. The first two are acknowledged: the event is on the disk. */
export type AppendOutcome =
  | { readonly id: string; readonly outcome: "stored" }
  | { readonly id: string; readonly outcome: "known" }
  /** Another event is there under this id; the one sent is not stored. */
  | { readonly id: string; readonly outcome: "id-taken" }
  /** The case was deleted by policy and does not come back. */
  | { readonly id: string; readonly outcome: "case-purged" };

/** Events by one insert; below what one statement of either engine may bind. */
const ROWS = 50;

/** Adds events, each once; gives the outcomes, in the order of the events, only after the commit. */
export async function appendEvents(
  db: Kysely<Tables>,
  clock: () => string,
  request: AppendRequest,
): Promise<readonly AppendOutcome[]> {
  if (request.events.length === 0) return [];
  return withSiteLocked(db, { site: request.site, clock }, async (locked) => {
    const known = await knownPayloads(locked, request.events);
    const purged = await purgedCases(locked, request.events);
    const rows: CaseEventRow[] = [];
    const outcomes = request.events.map((event): AppendOutcome => {
      const payload = canonicalText(event);
      const { id } = event;
      const there = known.get(id);
      if (there !== undefined) return { id, outcome: there === payload ? "known" : "id-taken" };
      if (purged.has(event.caseId)) return { id, outcome: "case-purged" };
      known.set(id, payload);
      rows.push(rowOf(event, payload, request, locked));
      return { id, outcome: "stored" };
    });
    for (let i = 0; i < rows.length; i += ROWS) {
      await locked.trx
        .insertInto("case_event")
        .values(rows.slice(i, i + ROWS))
        .execute();
    }
    const caseIds = [...new Set(rows.map(({ case_id }) => case_id))];
    await refreshSummaries(locked.trx, { site: locked.id, caseIds });
    const first = rows[0];
    if (first !== undefined) {
      await locked.note({
        actor: request.actor,
        action: "cases.append",
        subject: request.device,
        detail: { first: first.cursor, last: locked.lastCursor(), digest: digestOf(rows) },
      });
    }
    return outcomes;
  });
}

/** Ties the events of one write to the audit log. */
export function digestOf(rows: readonly Pick<CaseEventRow, "cursor" | "payload">[]): string {
  return sha256(rows.map(({ cursor, payload }) => `${cursor} ${sha256(payload)}\n`).join(""));
}

function rowOf(event: CaseEvent, payload: string, request: AppendRequest, locked: LockedSite): CaseEventRow {
  return {
    site: locked.id,
    cursor: locked.nextCursor(),
    id: event.id,
    case_id: event.caseId,
    type: event.type,
    at: event.at,
    device: request.device,
    received_at: locked.at,
    skew_ms: request.skewMs ?? null,
    model: event.versions.model,
    formulary: event.versions.formulary,
    calibration: event.versions.calibration ?? null,
    payload,
  };
}

async function knownPayloads(
  { trx, id }: LockedSite,
  events: readonly CaseEvent[],
): Promise<Map<string, string>> {
  const rows = await trx
    .selectFrom("case_event")
    .select(["id", "payload"])
    .where("site", "=", id)
    .where(
      "id",
      "in",
      events.map((event) => event.id),
    )
    .execute();
  return new Map(rows.map((row) => [row.id, row.payload]));
}

async function purgedCases(
  { trx, id }: LockedSite,
  events: readonly CaseEvent[],
): Promise<ReadonlySet<string>> {
  const rows = await trx
    .selectFrom("purged_case")
    .select("case_id")
    .where("site", "=", id)
    .where("case_id", "in", [...new Set(events.map(({ caseId }) => caseId))])
    .execute();
  return new Set(rows.map((row) => row.case_id));
}
