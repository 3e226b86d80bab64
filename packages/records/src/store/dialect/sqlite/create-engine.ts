import { DatabaseSync } from "node:sqlite";
import { SqliteDialect, sql } from "kysely";
import type { Engine } from "../engine.ts";
import { adaptDatabase } from "./adapt-database.ts";
import { explainSqliteError } from "./explain-error.ts";

/** How long a write waits for another program, such as a backup, before it fails. */
const BUSY_MS = 10_000;

/**
 * SQLite in one file. WAL lets others read while one writes; `synchronous = FULL` puts every commit on the disk before it
 * is acknowledged, which WAL alone does not.
 */
export function createSqliteEngine({ file }: { readonly file: string }): Engine {
  const open = (): DatabaseSync => {
    const database = new DatabaseSync(file, { timeout: BUSY_MS });
    database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;");
    return database;
  };
  return {
    name: "sqlite",
    dialect: new SqliteDialect({ database: async () => adaptDatabase(open()) }),
    explainError: explainSqliteError,
    async keepAppendOnly(db, table, { unlessPurged }) {
      const purged = sql`EXISTS (SELECT 1 FROM purged_case p WHERE p.site = OLD.site AND p.case_id = OLD.case_id)`;
      const refuse = (operation: string) =>
        sql`BEGIN SELECT RAISE(ABORT, ${sql.lit(`${table} is append-only: ${operation} refused`)}); END`;
      await sql`CREATE TRIGGER ${sql.raw(`${table}_no_update`)} BEFORE UPDATE ON ${sql.table(table)} ${refuse("update")}`.execute(
        db,
      );
      const when = unlessPurged ? sql`WHEN NOT ${purged}` : sql``;
      await sql`CREATE TRIGGER ${sql.raw(`${table}_no_delete`)} BEFORE DELETE ON ${sql.table(table)} ${when} ${refuse("delete")}`.execute(
        db,
      );
    },
    // The first read of a deferred transaction in WAL mode fixes what it sees.
    async holdSnapshot() {},
  };
}
