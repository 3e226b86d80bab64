import { noHash } from "../audit-hash.ts";
import type { MigrationStep } from "./migration-context.ts";

/** The audit log, a chain of hashes for each site; a site that was there before begins its chain empty. */
export const createAudit: MigrationStep = async (db, engine) => {
  await db.schema
    .alterTable("site")
    .addColumn("audit_count", "bigint", (column) => column.notNull().defaultTo(0))
    .execute();
  await db.schema
    .alterTable("site")
    .addColumn("audit_hash", "text", (column) => column.notNull().defaultTo(noHash))
    .execute();
  await db.schema
    .createTable("audit_entry")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("position", "bigint", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("actor", "text", (column) => column.notNull())
    .addColumn("action", "text", (column) => column.notNull())
    .addColumn("subject", "text", (column) => column.notNull())
    .addColumn("detail", "text", (column) => column.notNull())
    .addColumn("previous_hash", "text", (column) => column.notNull())
    .addColumn("hash", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("audit_entry_by_position", ["site", "position"] as never)
    .execute();
  await engine.keepAppendOnly(db, "audit_entry", { unlessPurged: false });
};
