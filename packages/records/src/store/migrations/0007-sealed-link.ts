import type { MigrationStep } from "./migration-context.ts";

/** What a site seals for a case; the only table beside people that may say who somebody is, and not to whoever reads it. */
export const createSealedLink: MigrationStep = async (db) => {
  await db.schema
    .createTable("sealed_link")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("case_id", "text", (column) => column.notNull())
    .addColumn("sealed", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("by", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("sealed_link_once", ["site", "case_id"] as never)
    .execute();
};
