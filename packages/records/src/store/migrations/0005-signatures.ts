import type { MigrationStep } from "./migration-context.ts";

/** What a licensed reviewer signs with, and whose signatures a document was put in force by; the log of who did what by place in it. */
export const createSignatures: MigrationStep = async (db) => {
  await db.schema.alterTable("signature").addColumn("registration", "text").execute();
  await db.schema.alterTable("publication").addColumn("signers", "text").execute();
  await db.schema.createIndex("document_by_kind").on("document").columns(["site", "kind", "at"]).execute();
  await db.schema
    .createIndex("audit_entry_by_action")
    .on("audit_entry")
    .columns(["site", "action", "position"])
    .execute();
  await db.schema
    .createIndex("audit_entry_by_actor")
    .on("audit_entry")
    .columns(["site", "actor", "position"])
    .execute();
};
