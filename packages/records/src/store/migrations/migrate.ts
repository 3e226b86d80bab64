import type { Kysely } from "kysely";
import { type MigrationResultSet, Migrator } from "kysely/migration";
import type { Engine } from "../dialect/engine.ts";
import { migrationSteps } from "./migration-steps.ts";

/** Brings the tables up to `last` (all steps without it). Throws where the database is of a later version of the software. */
export async function migrate(db: Kysely<never>, engine: Engine, last?: string): Promise<void> {
  const migrations = Object.fromEntries(
    Object.entries(migrationSteps).map(([name, step]) => [
      name,
      { up: (inner: Kysely<never>) => step(inner, engine) },
    ]),
  );
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  const { error }: MigrationResultSet =
    last === undefined ? await migrator.migrateToLatest() : await migrator.migrateTo(last);
  if (error === undefined) return;
  if (error instanceof Error && error.message.includes("corrupted migrations")) {
    throw new RangeError(
      `Cannot open the records as they were written by a later version of Steelyard; run that version, or restore a backup made before it (${error.message})`,
    );
  }
  throw error;
}
