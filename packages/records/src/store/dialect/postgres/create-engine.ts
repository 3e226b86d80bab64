import { PostgresDialect, sql } from "kysely";
import pg from "pg";
import type { Engine } from "../engine.ts";
import { explainPostgresError } from "./explain-error.ts";

/** Oid of `int8`. Counters stay far below 2^53, so a number holds them. */
const INT8 = 20;

/** PostgreSQL by `pg`, a pool of connections for each server. */
export function createPostgresEngine({ url }: { readonly url: string }): Engine {
  const pool = new pg.Pool({
    connectionString: url,
    max: 10,
    connectionTimeoutMillis: 5_000,
    // Without it a machine that vanished would hold a lock until TCP gives up.
    keepAlive: true,
    idle_in_transaction_session_timeout: 30_000,
    types: {
      getTypeParser: ((oid: number, format: "text" | "binary") =>
        oid === INT8 ? Number : pg.types.getTypeParser(oid, format)) as typeof pg.types.getTypeParser,
    },
  });
  // A connection that breaks while idle is replaced at the next query; unheard, it would end the server.
  pool.on("error", () => {});
  // So would one that breaks between two statements of a transaction: the next statement says so to whoever waits.
  pool.on("connect", (client) => client.on("error", () => {}));
  return {
    name: "postgres",
    dialect: new PostgresDialect({ pool }),
    explainError: explainPostgresError,
    async keepAppendOnly(db, table, { unlessPurged }) {
      const name = `${table}_append_only`;
      const allowed = unlessPurged
        ? "IF TG_OP = 'DELETE' AND EXISTS (SELECT 1 FROM purged_case p WHERE p.site = OLD.site AND p.case_id = OLD.case_id) THEN RETURN OLD; END IF;"
        : "";
      await sql
        .raw(
          `CREATE FUNCTION ${name}() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN ${allowed} RAISE EXCEPTION '${table} is append-only: % refused', lower(TG_OP); END $$`,
        )
        .execute(db);
      await sql
        .raw(
          `CREATE TRIGGER ${name} BEFORE UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION ${name}()`,
        )
        .execute(db);
      await sql
        .raw(
          `CREATE TRIGGER ${name}_truncate BEFORE TRUNCATE ON ${table} FOR EACH STATEMENT EXECUTE FUNCTION ${name}()`,
        )
        .execute(db);
    },
    async holdSnapshot(db) {
      await sql`SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY`.execute(db);
    },
  };
}
