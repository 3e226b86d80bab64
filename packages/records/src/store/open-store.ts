import { Kysely, sql } from "kysely";
import { createPostgresEngine } from "./dialect/postgres/create-engine.ts";
import { createSqliteEngine } from "./dialect/sqlite/create-engine.ts";
import { migrate } from "./migrations/migrate.ts";
import { createStore, type Store } from "./store.ts";
import type { Tables } from "./tables.ts";

/** Where the records lie: one SQLite file, or a PostgreSQL database that many servers share. */
export type DatabaseSettings =
  | { readonly type: "sqlite"; readonly file: string }
  | { readonly type: "postgres"; readonly url: string };

export interface StoreOptions {
  readonly database: DatabaseSettings;
  /** Time of the server as events have it: UTC with milliseconds. */
  readonly clock: () => string;
  /** A new UUID; used once, when the store is made. */
  readonly newId: () => string;
  /** The last migration to apply; all without it. Only tests and upgrades by hand stop earlier. */
  readonly lastMigration?: string;
}

/**
 * Opens the records of a department or of many hospitals and brings their tables up to date.
 *
 * Rejects with a `RangeError` where the records were written by a later version, and with the error of the engine where
 * the file or the database cannot be reached.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStore } from "@steelyard/records/store";
 *
 * const store = await openStore({
 *   database: { type: "sqlite", file: ":memory:" },
 *   clock: () => "2026-11-25T03:12:00.000Z",
 *   newId: () => "00000000-0000-4000-8000-000000000001",
 * });
 * await store.addSite("resus");
 * assert.deepEqual(await store.readChanges({ site: "resus", since: 0, limit: 10 }), {
 *   changes: [],
 *   cursor: 0,
 *   more: false,
 * });
 * await store.close();
 * ```
 */
export async function openStore({ database, clock, newId, lastMigration }: StoreOptions): Promise<Store> {
  const engine =
    database.type === "sqlite" ? createSqliteEngine(database) : createPostgresEngine({ url: database.url });
  const db = new Kysely<Tables>({ dialect: engine.dialect });
  try {
    await migrate(db as unknown as Kysely<never>, engine, lastMigration);
    await sql`INSERT INTO store_fact (name, value) VALUES ('epoch', ${newId()}) ON CONFLICT DO NOTHING`.execute(
      db,
    );
    const { value: epoch } = await db
      .selectFrom("store_fact")
      .select("value")
      .where("name", "=", "epoch")
      .executeTakeFirstOrThrow();
    return createStore({ db, engine, clock, epoch });
  } catch (error) {
    await db.destroy();
    throw error;
  }
}
