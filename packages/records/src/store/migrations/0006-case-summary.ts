import type { Kysely } from "kysely";
import { rebuildSummaries } from "../case-summaries.ts";
import type { Tables } from "../tables.ts";
import type { MigrationStep } from "./migration-context.ts";

/**
 * One row for each case, as its events tell it, so that the lists of a department are read by an index. `*_at` is the start of the
 * case where it belongs into that list, and empty where it does not: so each list is one index.
 */
export const createCaseSummary: MigrationStep = async (db) => {
  await db.schema
    .createTable("case_summary")
    .addColumn("site", "text", (column) => column.notNull().references("site.id"))
    .addColumn("case_id", "text", (column) => column.notNull())
    .addColumn("code", "text", (column) => column.notNull())
    .addColumn("started_at", "text", (column) => column.notNull())
    .addColumn("listed_at", "text")
    .addColumn("open_at", "text")
    .addColumn("due_at", "text")
    .addColumn("weighed_at", "text")
    .addColumn("closed_at", "text")
    .addColumn("estimate_kg", "double precision")
    .addColumn("low95_kg", "double precision")
    .addColumn("high95_kg", "double precision")
    .addColumn("ideal_kg", "double precision")
    .addColumn("later_kg", "double precision")
    .addColumn("later_on", "text")
    .addColumn("doses", "bigint", (column) => column.notNull())
    .addColumn("model", "text", (column) => column.notNull())
    .addColumn("formulary", "text", (column) => column.notNull())
    .addColumn("calibration", "text")
    .addColumn("touched_at", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("case_summary_once", ["site", "case_id"] as never)
    .execute();
  await rebuildSummaries(db as unknown as Kysely<Tables>);
  for (const column of ["listed_at", "open_at", "due_at", "weighed_at", "code", "touched_at"]) {
    await db.schema
      .createIndex(`case_summary_by_${column}`)
      .on("case_summary")
      .columns(["site", column, "case_id"])
      .execute();
  }
};
