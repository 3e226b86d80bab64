import type { DatabaseSync, SQLInputValue, StatementSync } from "node:sqlite";
import type { SqliteDatabase, SqliteStatement } from "kysely";

/** Statements kept prepared; more than the store has. */
const KEPT = 200;

const nothing: SqliteStatement = {
  reader: false,
  all: () => [],
  run: () => ({ changes: 0, lastInsertRowid: 0 }),
  iterate: () => [][Symbol.iterator](),
};

/** Node's own SQLite behind the interface that Kysely's dialect asks for. */
export function adaptDatabase(database: DatabaseSync): SqliteDatabase {
  const kept = new Map<string, StatementSync>();
  const prepare = (text: string): StatementSync => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    const made = database.prepare(text);
    if (kept.size >= KEPT) kept.clear();
    kept.set(text, made);
    return made;
  };
  return {
    close: () => {
      kept.clear();
      database.close();
    },
    prepare: (text) => {
      // A full disk has rolled back already; saying it again would hide what had happened.
      if (text === "rollback" && !database.isTransaction) return nothing;
      const statement = prepare(text);
      return {
        reader: statement.columns().length > 0,
        all: (values) => statement.all(...(values as SQLInputValue[])),
        run: (values) => statement.run(...(values as SQLInputValue[])),
        iterate: (values) => statement.iterate(...(values as SQLInputValue[])),
      };
    },
  };
}
