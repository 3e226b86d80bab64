import type { Kysely } from "kysely";
import { digestOf } from "./append-events.ts";
import { auditHash, noHash } from "./audit-hash.ts";
import type { AuditEntryRow, Tables } from "./tables.ts";

export type AuditFault =
  /** A place is missing or taken twice: entries were removed, added or moved. */
  | { readonly type: "gap"; readonly site: string; readonly position: number }
  /** The entry does not follow from the one before it. */
  | { readonly type: "broken-chain"; readonly site: string; readonly position: number }
  /** The entry says something else than when it was written. */
  | { readonly type: "changed-entry"; readonly site: string; readonly position: number }
  /** The end of the log is not the end that the site remembers. */
  | { readonly type: "wrong-end"; readonly site: string; readonly expected: number; readonly found: number }
  /** Events that this entry says were added are others now. */
  | { readonly type: "changed-events"; readonly site: string; readonly position: number }
  /** More events are missing than were purged by policy. */
  | {
      readonly type: "missing-events";
      readonly site: string;
      readonly missing: number;
      readonly purged: number;
    };

export interface AuditReport {
  readonly sites: readonly {
    readonly site: string;
    readonly entries: number;
    /** Of the last entry. Kept elsewhere, it shows later that the log was not written anew. */
    readonly hash: string;
  }[];
  readonly faults: readonly AuditFault[];
}

const PAGE = 1_000;

/** Reads the whole log of every site, or of one, follows the chain and compares the events with what was logged when they came. */
export async function verifyAudit(db: Kysely<Tables>, only?: string): Promise<AuditReport> {
  const all = db.selectFrom("site").selectAll().orderBy("id");
  const sites = await (only === undefined ? all : all.where("id", "=", only)).execute();
  const faults: AuditFault[] = [];
  const ends: { site: string; entries: number; hash: string }[] = [];
  for (const { id: site, audit_count, audit_hash } of sites) {
    let [position, hash, missing] = [0, noHash, 0];
    for (;;) {
      const entries = await readPage(db, site, position);
      for (const entry of entries) {
        faults.push(...faultsOf(entry, { position: position + 1, hash }));
        missing += await compareEvents(db, entry, faults);
        ({ position, hash } = entry);
      }
      if (entries.length < PAGE) break;
    }
    if (position !== audit_count || hash !== audit_hash) {
      faults.push({ type: "wrong-end", site, expected: audit_count, found: position });
    }
    const purged = await countPurged(db, site);
    if (missing !== purged) faults.push({ type: "missing-events", site, missing, purged });
    ends.push({ site, entries: position, hash });
  }
  return { sites: ends, faults };
}

function readPage(db: Kysely<Tables>, site: string, after: number): Promise<AuditEntryRow[]> {
  return db
    .selectFrom("audit_entry")
    .selectAll()
    .where("site", "=", site)
    .where("position", ">", after)
    .orderBy("position")
    .limit(PAGE)
    .execute();
}

function faultsOf(
  entry: AuditEntryRow,
  expected: { readonly position: number; readonly hash: string },
): readonly AuditFault[] {
  const { site, position } = entry;
  if (position !== expected.position) return [{ type: "gap", site, position: expected.position }];
  if (entry.previous_hash !== expected.hash) return [{ type: "broken-chain", site, position }];
  return auditHash(entry) === entry.hash ? [] : [{ type: "changed-entry", site, position }];
}

/** How many of the events that the entry tells of are gone; a whole set must be the one that was logged. */
async function compareEvents(
  db: Kysely<Tables>,
  entry: AuditEntryRow,
  faults: AuditFault[],
): Promise<number> {
  if (entry.action !== "cases.append") return 0;
  const { first, last, digest } = JSON.parse(entry.detail) as Readonly<Record<string, number | string>>;
  const rows = await db
    .selectFrom("case_event")
    .select(["cursor", "payload"])
    .where("site", "=", entry.site)
    .where("cursor", ">=", Number(first))
    .where("cursor", "<=", Number(last))
    .orderBy("cursor")
    .execute();
  const missing = Number(last) - Number(first) + 1 - rows.length;
  if (missing === 0 && digestOf(rows) !== digest) {
    faults.push({ type: "changed-events", site: entry.site, position: entry.position });
  }
  return missing;
}

async function countPurged(db: Kysely<Tables>, site: string): Promise<number> {
  const row = await db
    .selectFrom("purged_case")
    .select(({ fn }) => fn.sum<number | string | null>("events").as("events"))
    .where("site", "=", site)
    .executeTakeFirst();
  return Number(row?.events ?? 0);
}
