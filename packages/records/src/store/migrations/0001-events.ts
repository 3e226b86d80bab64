import type { MigrationStep } from "./migration-context.ts";

/** Sites, devices and the events of cases. */
export const createEvents: MigrationStep = async (db, engine) => {
  await db.schema
    .createTable("store_fact")
    .addColumn("name", "text", (column) => column.primaryKey())
    .addColumn("value", "text", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("site")
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("last_cursor", "bigint", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("device")
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("name", "text", (column) => column.notNull())
    .addColumn("token_sha256", "text", (column) => column.notNull().unique())
    .addColumn("enrolled_at", "text", (column) => column.notNull())
    .addColumn("revoked_at", "text")
    .execute();
  await db.schema
    .createTable("case_event")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("cursor", "bigint", (column) => column.notNull())
    .addColumn("id", "text", (column) => column.notNull())
    .addColumn("case_id", "text", (column) => column.notNull())
    .addColumn("type", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("device", "text", (column) => column.notNull())
    .addColumn("received_at", "text", (column) => column.notNull())
    .addColumn("skew_ms", "bigint")
    .addColumn("model", "text", (column) => column.notNull())
    .addColumn("formulary", "text", (column) => column.notNull())
    .addColumn("calibration", "text")
    .addColumn("payload", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("case_event_by_cursor", ["site", "cursor"] as never)
    .addUniqueConstraint("case_event_once", ["site", "id"] as never)
    .execute();
  await db.schema
    .createIndex("case_event_by_case")
    .on("case_event")
    .columns(["site", "case_id", "cursor"])
    .execute();
  await db.schema
    .createIndex("case_event_by_time")
    .on("case_event")
    .columns(["site", "type", "at"])
    .execute();
  await db.schema
    .createTable("purged_case")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("cursor", "bigint", (column) => column.notNull())
    .addColumn("case_id", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("events", "bigint", (column) => column.notNull())
    .addColumn("reason", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("purged_case_by_cursor", ["site", "cursor"] as never)
    .addUniqueConstraint("purged_case_once", ["site", "case_id"] as never)
    .execute();
  await engine.keepAppendOnly(db, "case_event", { unlessPurged: true });
  await engine.keepAppendOnly(db, "purged_case", { unlessPurged: false });
};
