import type { MigrationStep } from "./migration-context.ts";

/** People, what they prove themselves by, and what stands open for a while: sessions, invitations, challenges, failures. */
export const createPeople: MigrationStep = async (db) => {
  await db.schema
    .createTable("person")
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("name", "text", (column) => column.notNull())
    .addColumn("login", "text", (column) => column.unique())
    .addColumn("roles", "text", (column) => column.notNull())
    .addColumn("state", "text", (column) => column.notNull())
    .addColumn("created_at", "text", (column) => column.notNull())
    .addColumn("joined_at", "text")
    .addColumn("last_sign_in_at", "text")
    .execute();
  await db.schema.createIndex("person_by_site").on("person").column("site").execute();
  await db.schema
    .createTable("credential")
    .addColumn("person", "text", (column) => column.primaryKey().references("person.id"))
    .addColumn("password", "text", (column) => column.notNull())
    .addColumn("set_at", "text", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("passkey")
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("person", "text", (column) => column.notNull().references("person.id"))
    .addColumn("credential_id", "text", (column) => column.notNull().unique())
    .addColumn("public_key", "text", (column) => column.notNull())
    .addColumn("counter", "bigint", (column) => column.notNull())
    .addColumn("name", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("last_used_at", "text")
    .execute();
  await db.schema.createIndex("passkey_by_person").on("passkey").column("person").execute();
  await db.schema
    .createTable("session")
    .addColumn("token_sha256", "text", (column) => column.primaryKey())
    .addColumn("person", "text", (column) => column.notNull().references("person.id"))
    .addColumn("started_at", "text", (column) => column.notNull())
    .addColumn("used_at", "text", (column) => column.notNull())
    .execute();
  await db.schema.createIndex("session_by_person").on("session").column("person").execute();
  await db.schema
    .createTable("invitation")
    .addColumn("person", "text", (column) => column.primaryKey().references("person.id"))
    .addColumn("code_sha256", "text", (column) => column.notNull().unique())
    .addColumn("expires_at", "text", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("set_up_code")
    .addColumn("code_sha256", "text", (column) => column.primaryKey())
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("expires_at", "text", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("challenge")
    .addColumn("id", "text", (column) => column.primaryKey())
    .addColumn("person", "text")
    .addColumn("challenge", "text", (column) => column.notNull())
    .addColumn("expires_at", "text", (column) => column.notNull())
    .execute();
  await db.schema
    .createTable("failed_attempt")
    .addColumn("subject", "text", (column) => column.primaryKey())
    .addColumn("count", "bigint", (column) => column.notNull())
    .addColumn("last_at", "text", (column) => column.notNull())
    .addColumn("until", "text", (column) => column.notNull())
    .execute();
};
