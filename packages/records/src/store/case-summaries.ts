import type { Kysely } from "kysely";
import type { CaseEvent } from "../case/case-event.ts";
import { summaryRow } from "./summary-row.ts";
import type { CaseSummaryRow, Tables } from "./tables.ts";

/** Rows in one statement: 20 columns each, below what either engine may bind. */
const ROWS = 50;

/** Folds these cases anew from all their events; to be called in the transaction that added some. */
export async function refreshSummaries(
  db: Kysely<Tables>,
  { site, caseIds }: { readonly site: string; readonly caseIds: readonly string[] },
): Promise<void> {
  for (let i = 0; i < caseIds.length; i += ROWS) {
    const rows = await foldCases(db, { site, caseIds: caseIds.slice(i, i + ROWS) });
    if (rows.length === 0) continue;
    await db
      .insertInto("case_summary")
      .values(rows)
      .onConflict((conflict) =>
        conflict.columns(["site", "case_id"]).doUpdateSet(({ ref }) => {
          const set: Record<string, unknown> = {};
          for (const column of Object.keys(rows[0] as CaseSummaryRow)) {
            if (column !== "site" && column !== "case_id")
              set[column] = ref(`excluded.${column}` as "excluded.code");
          }
          return set;
        }),
      )
      .execute();
  }
}

/** Every row of every site from the events: after a restore, and where there were events before there were rows. */
export async function rebuildSummaries(db: Kysely<Tables>): Promise<void> {
  await db.deleteFrom("case_summary").execute();
  for (const { id: site } of await db.selectFrom("site").select("id").orderBy("id").execute()) {
    for (let last = ""; ; ) {
      const page = await db
        .selectFrom("case_event")
        .select("case_id")
        .distinct()
        .where("site", "=", site)
        .where("case_id", ">", last)
        .orderBy("case_id")
        .limit(ROWS)
        .execute();
      await refreshSummaries(db, { site, caseIds: page.map(({ case_id }) => case_id) });
      if (page.length < ROWS) break;
      last = page.at(-1)?.case_id ?? "";
    }
  }
}

async function foldCases(
  db: Kysely<Tables>,
  { site, caseIds }: { readonly site: string; readonly caseIds: readonly string[] },
): Promise<readonly CaseSummaryRow[]> {
  const events = await db
    .selectFrom("case_event")
    .select(["case_id", "payload", "received_at"])
    .where("site", "=", site)
    .where("case_id", "in", caseIds)
    .execute();
  const byCase = new Map<string, { events: CaseEvent[]; touchedAt: string }>();
  for (const { case_id, payload, received_at } of events) {
    const known = byCase.get(case_id) ?? { events: [], touchedAt: "" };
    known.events.push(JSON.parse(payload) as CaseEvent);
    if (received_at > known.touchedAt) known.touchedAt = received_at;
    byCase.set(case_id, known);
  }
  return [...byCase.values()].map(({ events: own, touchedAt }) => summaryRow(own, { site, touchedAt }));
}
