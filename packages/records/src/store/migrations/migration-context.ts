import type { Kysely } from "kysely";
import type { Engine } from "../dialect/engine.ts";

/** A step forward; there is none back: an earlier state comes from a backup. */
export type MigrationStep = (db: Kysely<never>, engine: Engine) => Promise<void>;
