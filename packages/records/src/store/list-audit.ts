import type { Kysely } from "kysely";
import { type NameOf, namesOf } from "./names-of.ts";
import type { AuditEntryRow, Tables } from "./tables.ts";

export interface AuditSearch {
  readonly site: string;
  /** Entries before this place. */
  readonly before?: number | undefined;
  readonly limit: number;
  readonly action?: string | undefined;
  readonly actor?: string | undefined;
}

/** Entries of the log of a site, the latest first, and what their actors are called now. */
export async function listAudit(
  db: Kysely<Tables>,
  { site, before, limit, action, actor }: AuditSearch,
): Promise<{ readonly entries: readonly AuditEntryRow[]; readonly nameOf: NameOf }> {
  let query = db
    .selectFrom("audit_entry")
    .selectAll()
    .where("site", "=", site)
    .where("position", "<", before ?? Number.MAX_SAFE_INTEGER);
  if (action !== undefined) query = query.where("action", "=", action);
  if (actor !== undefined) query = query.where("actor", "=", actor);
  const entries = await query.orderBy("position", "desc").limit(limit).execute();
  return { entries, nameOf: await namesOf(db, site) };
}
