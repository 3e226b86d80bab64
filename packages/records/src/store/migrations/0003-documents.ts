import type { MigrationStep } from "./migration-context.ts";

/** Formularies and calibrations, who signed them, and which was in force since when. */
export const createDocuments: MigrationStep = async (db, engine) => {
  await db.schema
    .createTable("document")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("kind", "text", (column) => column.notNull())
    .addColumn("label", "text", (column) => column.notNull())
    .addColumn("content", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("by", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("document_by_sha256", ["site", "sha256"] as never)
    .execute();
  await db.schema
    .createTable("signature")
    .addColumn("site", "text", (column) => column.notNull())
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("signer", "text", (column) => column.notNull())
    .addColumn("role", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("signature_once", ["site", "sha256", "signer"] as never)
    .addForeignKeyConstraint("signature_of", ["site", "sha256"] as never, "document", ["site", "sha256"])
    .execute();
  await db.schema
    .createTable("publication")
    .addColumn("site", "text", (column) => column.notNull())
    .addColumn("position", "bigint", (column) => column.notNull())
    .addColumn("kind", "text", (column) => column.notNull())
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("by", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("publication_by_position", ["site", "kind", "position"] as never)
    .addForeignKeyConstraint("publication_of", ["site", "sha256"] as never, "document", ["site", "sha256"])
    .execute();
  for (const table of ["document", "signature", "publication"]) {
    await engine.keepAppendOnly(db, table, { unlessPurged: false });
  }
};
