import { createHash } from "node:crypto";
import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import { rebuildSummaries } from "./case-summaries.ts";
import { migrationSteps } from "./migrations/migration-steps.ts";
import type { Store } from "./store.ts";
import type { Tables } from "./tables.ts";

/** The first line of a backup; a reader that knows only an older format refuses it. */
const format = "steelyard-backup";
const formatVersion = 1;

/** In an order in which every row finds what it refers to. Facts of the store itself are not among them: a restored one has its own. Nor is what stands open for a while, such as sessions and invitations: after a restore people sign in again. */
const tables = [
  "site",
  "device",
  "case_event",
  "purged_case",
  "sealed_link",
  "document",
  "signature",
  "publication",
  "person",
  "credential",
  "passkey",
  "audit_entry",
] as const satisfies readonly (keyof Tables)[];
type Table = (typeof tables)[number];

/** Tables that grow without end, and the count by which their rows are read page by page, site by site; the others are read at once. */
const counted: Readonly<Partial<Record<Table, "cursor" | "position">>> = {
  case_event: "cursor",
  audit_entry: "position",
};
const pageRows = 2_000;
const lastMigration = Object.keys(migrationSteps).at(-1) ?? "";

export type RestoreIssue =
  /** Not the start of a backup, or of a later format. */
  | { readonly type: "no-backup" }
  /** Made by another version: restore with that one, then upgrade. */
  | { readonly type: "other-tables"; readonly found: string; readonly expected: string }
  /** The end is missing, or a line was changed. */
  | { readonly type: "damaged"; readonly line: number }
  /** There are records already: a backup is restored into an empty database. */
  | { readonly type: "not-empty" };

/**
 * Writes every row of every table, one JSON line each, as they were at one moment, while others go on writing; the last line has
 * the count and the SHA-256 of all before it. Gives the rows written.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { backupStore, openStore } from "@steelyard/records/store";
 *
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const options = { database: { type: "sqlite", file: ":memory:" }, clock: () => "2026-11-25T03:12:00.000Z", newId } as const;
 * const store = await openStore(options);
 * await store.addSite("resus");
 * const lines: string[] = [];
 * assert.equal(await backupStore(store, async (line) => void lines.push(line)), 1);
 * assert.equal(lines.length, 3);
 * await store.close();
 * ```
 */
export function backupStore(
  { db, engine, clock }: Store,
  write: (line: string) => Promise<void>,
): Promise<number> {
  return db.transaction().execute(async (trx) => {
    await engine.holdSnapshot(trx as unknown as Kysely<never>);
    const hash = createHash("sha256");
    let rows = 0;
    const put = async (value: unknown): Promise<void> => {
      const line = JSON.stringify(value);
      hash.update(line).update("\n");
      await write(line);
    };
    await put({ format, formatVersion, tables: lastMigration, at: clock() });
    for (const table of tables) {
      for await (const page of pagesOf(trx, table)) {
        for (const row of page) await put({ table, row });
        rows += page.length;
      }
    }
    await write(JSON.stringify({ end: true, rows, sha256: hash.digest("hex") }));
    return rows;
  });
}

async function* pagesOf(trx: Kysely<Tables>, table: Table): AsyncGenerator<readonly object[]> {
  const count = counted[table];
  if (count === undefined) {
    yield await trx.selectFrom(table).selectAll().execute();
    return;
  }
  for (const { id } of await trx.selectFrom("site").select("id").orderBy("id").execute()) {
    for (let last = 0; ; ) {
      const page = await trx
        .selectFrom(table as "case_event")
        .selectAll()
        .where("site", "=", id)
        .where(count as "cursor", ">", last)
        .orderBy(count as "cursor")
        .limit(pageRows)
        .execute();
      yield page;
      if (page.length < pageRows) break;
      last = Number((page.at(-1) as unknown as Readonly<Record<string, number>>)[count]);
    }
  }
}

/** Thrown inside the transaction, so that nothing of a bad backup stays. */
class Refused extends Error {
  readonly issue: RestoreIssue;

  constructor(issue: RestoreIssue) {
    super(issue.type);
    this.issue = issue;
  }
}

/**
 * Puts a backup into an empty store, whole or not at all; gives the rows. The store keeps its own epoch, by which devices learn to send
 * again what the backup lacks.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStore, restoreStore } from "@steelyard/records/store";
 *
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const options = { database: { type: "sqlite", file: ":memory:" }, clock: () => "2026-11-25T03:12:00.000Z", newId } as const;
 * const store = await openStore(options);
 * async function* nothing() {}
 * assert.deepEqual(await restoreStore(store, nothing()), { ok: false, error: { type: "no-backup" } });
 * await store.close();
 * ```
 */
export async function restoreStore(
  { db }: Store,
  lines: AsyncIterable<string>,
): Promise<Result<number, RestoreIssue>> {
  try {
    return ok(await db.transaction().execute((trx) => restoreLines(trx, lines)));
  } catch (error) {
    if (error instanceof Refused) return err(error.issue);
    throw error;
  }
}

async function restoreLines(trx: Kysely<Tables>, lines: AsyncIterable<string>): Promise<number> {
  if ((await trx.selectFrom("site").select("id").limit(1).execute()).length > 0) {
    throw new Refused({ type: "not-empty" });
  }
  const hash = createHash("sha256");
  let [number, rows, ended] = [0, 0, false];
  for await (const line of lines) {
    number += 1;
    if (line === "") continue;
    const value = parse(line);
    if (number === 1) checkHead(value);
    else if (ended || value === undefined) throw new Refused({ type: "damaged", line: number });
    else if (value.end === true) {
      if (value.rows !== rows || value.sha256 !== hash.digest("hex")) {
        throw new Refused({ type: "damaged", line: number });
      }
      ended = true;
      continue;
    } else {
      const table = tables.find((own) => own === value.table);
      if (table === undefined || typeof value.row !== "object") {
        throw new Refused({ type: "damaged", line: number });
      }
      await trx
        .insertInto(table)
        .values(value.row as never)
        .execute();
      rows += 1;
    }
    hash.update(line).update("\n");
  }
  // What is made from the events is not in a backup: it is made from them again.
  await rebuildSummaries(trx);
  if (!ended) throw new Refused(number === 0 ? { type: "no-backup" } : { type: "damaged", line: number + 1 });
  return rows;
}

function parse(line: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === "object" && value !== null ? { ...value } : undefined;
  } catch {
    return undefined;
  }
}

function checkHead(head: Readonly<Record<string, unknown>> | undefined): void {
  if (head?.format !== format || head.formatVersion !== formatVersion)
    throw new Refused({ type: "no-backup" });
  if (head.tables !== lastMigration) {
    throw new Refused({ type: "other-tables", found: String(head.tables), expected: lastMigration });
  }
}
