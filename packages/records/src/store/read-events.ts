import type { Kysely } from "kysely";
import type { CaseEvent } from "../case/case-event.ts";
import type { Tables } from "./tables.ts";

/** A change of the site, in the order of cursors. */
export type Change =
  | { readonly cursor: number; readonly event: CaseEvent }
  /** The events of this case are gone by policy, here and from now on everywhere. */
  | { readonly cursor: number; readonly purgedCaseId: string };

export interface ChangePage {
  readonly changes: readonly Change[];
  /** Ask from here next time. */
  readonly cursor: number;
  /** There was more at the time. */
  readonly more: boolean;
}

export interface ReadRequest {
  readonly site: string;
  readonly since: number;
  readonly limit: number;
}

/** What happened after a cursor, oldest first. */
export async function readChanges(
  db: Kysely<Tables>,
  { site, since, limit }: ReadRequest,
): Promise<ChangePage> {
  const events = await db
    .selectFrom("case_event")
    .select(["cursor", "payload"])
    .where("site", "=", site)
    .where("cursor", ">", since)
    .orderBy("cursor")
    .limit(limit + 1)
    .execute();
  const purged = await db
    .selectFrom("purged_case")
    .select(["cursor", "case_id"])
    .where("site", "=", site)
    .where("cursor", ">", since)
    .orderBy("cursor")
    .limit(limit + 1)
    .execute();
  const all = [
    ...events.map(({ cursor, payload }): Change => ({ cursor, event: JSON.parse(payload) as CaseEvent })),
    ...purged.map((row): Change => ({ cursor: row.cursor, purgedCaseId: row.case_id })),
  ].sort((a, b) => a.cursor - b.cursor);
  const changes = all.slice(0, limit);
  return { changes, cursor: changes.at(-1)?.cursor ?? since, more: all.length > limit };
}

/** The events of one case, in the order in which they came. */
export async function readCaseEvents(
  db: Kysely<Tables>,
  { site, caseId }: { readonly site: string; readonly caseId: string },
): Promise<readonly CaseEvent[]> {
  const rows = await db
    .selectFrom("case_event")
    .select("payload")
    .where("site", "=", site)
    .where("case_id", "=", caseId)
    .orderBy("cursor")
    .execute();
  return rows.map(({ payload }) => JSON.parse(payload) as CaseEvent);
}

/** Throws where there is no such event at the site. */
export async function cursorOf(
  db: Kysely<Tables>,
  { site, id }: { readonly site: string; readonly id: string },
): Promise<number> {
  const { cursor } = await db
    .selectFrom("case_event")
    .select("cursor")
    .where("site", "=", site)
    .where("id", "=", id)
    .executeTakeFirstOrThrow();
  return cursor;
}
