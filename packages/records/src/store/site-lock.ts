import { type Kysely, sql, type Transaction } from "kysely";
import { canonicalText } from "../case/canonical-text.ts";
import { auditHash } from "./audit-hash.ts";
import type { SiteRow, Tables } from "./tables.ts";

/** What was done, by whom, to what: no measurement, no note and no name of a patient ever stands in it. */
export interface AuditNote {
  /** `device:<id>`, `person:<id>`, `command` or `server`. */
  readonly actor: string;
  /** `cases.append`, `cases.read`, `cases.purge`, `document.publish`, .. */
  readonly action: string;
  readonly subject: string;
  readonly detail?: Readonly<Record<string, string | number | boolean>>;
}

/** The row of a site while its lock is held; counters are written back when the work is done. */
export interface LockedSite {
  readonly trx: Transaction<Tables>;
  readonly id: string;
  readonly at: string;
  /** The next place among the cursors. */
  readonly nextCursor: () => number;
  readonly lastCursor: () => number;
  readonly note: (note: AuditNote) => Promise<void>;
}

/**
 * Does `work` in one transaction that begins by writing the site's row. So writes to one site wait for one another,
 * and whoever reads up to a cursor will never see a smaller one appear; writes to other sites go on beside it.
 */
export async function withSiteLocked<T>(
  db: Kysely<Tables>,
  { site, clock }: { readonly site: string; readonly clock: () => string },
  work: (locked: LockedSite) => Promise<T>,
): Promise<T> {
  return db.transaction().execute(async (trx) => {
    const row = await lock(trx, site);
    let { last_cursor: cursor, audit_count: count, audit_hash: hash } = row;
    const at = clock();
    const result = await work({
      trx,
      id: site,
      at,
      nextCursor: () => ++cursor,
      lastCursor: () => cursor,
      note: async ({ actor, action, subject, detail = {} }) => {
        const entry = {
          site,
          position: ++count,
          at,
          actor,
          action,
          subject,
          detail: canonicalText(detail),
          previous_hash: hash,
        };
        hash = auditHash(entry);
        await trx
          .insertInto("audit_entry")
          .values({ ...entry, hash })
          .execute();
      },
    });
    if (cursor !== row.last_cursor || count !== row.audit_count) {
      await trx
        .updateTable("site")
        .set({ last_cursor: cursor, audit_count: count, audit_hash: hash })
        .where("id", "=", site)
        .execute();
    }
    return result;
  });
}

async function lock(trx: Transaction<Tables>, site: string): Promise<SiteRow> {
  const take = () =>
    trx
      .updateTable("site")
      .set({ last_cursor: sql`last_cursor` })
      .where("id", "=", site)
      .returningAll()
      .executeTakeFirst();
  const row = await take();
  if (row === undefined)
    throw new RangeError(`Cannot write to the site as it is not known: current value is ${site}`);
  return row;
}
