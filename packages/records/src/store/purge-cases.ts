import type { Kysely } from "kysely";
import { sql } from "kysely";
import { withSiteLocked } from "./site-lock.ts";
import type { Tables } from "./tables.ts";

export interface PurgeRequest {
  readonly site: string;
  readonly actor: string;
  /** Cases that nothing reached since this time of the server go. */
  readonly untouchedSince: string;
  /** The rule that was applied, as `retention of 365 days`. */
  readonly reason: string;
}

/** Cases purged in one transaction, so that writers need not wait long. */
const CASES = 100;

/**
 * Deletes cases by policy: their events go, and what stays is the id, the day, the number of events and the reason. A device that sends such a
 * case again is refused, and every device that pulls is told.
 */
export async function purgeCases(
  db: Kysely<Tables>,
  clock: () => string,
  request: PurgeRequest,
): Promise<{ readonly cases: number; readonly events: number }> {
  let [cases, events] = [0, 0];
  for (;;) {
    const step = await purgeSome(db, clock, request);
    cases += step.cases;
    events += step.events;
    if (step.cases < CASES) return { cases, events };
  }
}

function purgeSome(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, untouchedSince, reason }: PurgeRequest,
): Promise<{ readonly cases: number; readonly events: number }> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, nextCursor, note }) => {
    const old = await trx
      .selectFrom("case_summary")
      .select("case_id")
      .where("site", "=", site)
      .where("touched_at", "<", untouchedSince)
      .orderBy("touched_at")
      .limit(CASES)
      .execute();
    let sum = 0;
    for (const { case_id } of old) {
      const { events } = await trx
        .selectFrom("case_event")
        .select(sql<number>`count(*)`.as("events"))
        .where("site", "=", site)
        .where("case_id", "=", case_id)
        .executeTakeFirstOrThrow();
      await trx
        .insertInto("purged_case")
        .values({ site, cursor: nextCursor(), case_id, at, events, reason })
        .execute();
      await trx.deleteFrom("case_event").where("site", "=", site).where("case_id", "=", case_id).execute();
      await trx.deleteFrom("case_summary").where("site", "=", site).where("case_id", "=", case_id).execute();
      await trx.deleteFrom("sealed_link").where("site", "=", site).where("case_id", "=", case_id).execute();
      await note({ actor, action: "cases.purge", subject: case_id, detail: { events, reason } });
      sum += events;
    }
    return { cases: old.length, events: sum };
  });
}
