import type { DatabaseSettings, Store } from "@steelyard/records/store";
import { openStore } from "@steelyard/records/store";
import { type CompiledQuery, Kysely } from "kysely";
import { createPostgresEngine } from "../../src/store/dialect/postgres/create-engine.ts";
import { createSqliteEngine } from "../../src/store/dialect/sqlite/create-engine.ts";
import { createStore } from "../../src/store/store.ts";
import type { Tables } from "../../src/store/tables.ts";

/** Tables that grow without end: none of them may ever be read from one end to the other to answer a question. */
const growingTables = ["case_event", "case_summary", "purged_case", "audit_entry", "case_summary"];

export interface Plan {
  readonly sql: string;
  /** As the engine says it, one step a line. */
  readonly steps: readonly string[];
  /** Steps that read a growing table without a condition on an index. */
  readonly scans: readonly string[];
}

export interface WatchedStore {
  readonly store: Store;
  /** What was asked of the engine since the last call, each text once. */
  readonly takeQueries: () => readonly CompiledQuery[];
}

/** A store whose queries are kept. */
export async function watchStore(
  database: DatabaseSettings,
  { clock, newId }: { readonly clock: () => string; readonly newId: () => string },
): Promise<WatchedStore> {
  const opened = await openStore({ database, clock, newId });
  const { epoch } = opened;
  await opened.close();
  const engine = database.type === "sqlite" ? createSqliteEngine(database) : createPostgresEngine(database);
  let queries = new Map<string, CompiledQuery>();
  const db = new Kysely<Tables>({
    dialect: engine.dialect,
    log: ({ query }) => void queries.set(query.sql, query),
  });
  return {
    store: createStore({ db, engine, clock, epoch }),
    takeQueries: () => {
      const taken = [...queries.values()];
      queries = new Map();
      return taken;
    },
  };
}

/** How the engine would carry out a query, by its own word and with the statistics that it has. */
export async function explainQuery({ engine, db }: Store, query: CompiledQuery): Promise<Plan | undefined> {
  if (!/^(select|update|delete|with)\b/i.test(query.sql)) return undefined;
  const isSqlite = engine.name === "sqlite";
  const sql = `${isSqlite ? "EXPLAIN QUERY PLAN" : "EXPLAIN (FORMAT JSON)"} ${query.sql}`;
  const { rows } = await db.executeQuery({ ...query, sql } as CompiledQuery);
  const steps = isSqlite ? (rows as { detail: string }[]).map(({ detail }) => detail) : stepsOf(rows[0]);
  return { sql: query.sql, steps, scans: steps.filter(isScan) };
}

interface PlanNode {
  readonly "Node Type": string;
  readonly "Relation Name"?: string;
  readonly "Index Name"?: string;
  readonly "Index Cond"?: string;
  readonly Plans?: readonly PlanNode[];
}

function stepsOf(row: unknown): readonly string[] {
  const [{ Plan }] = (row as { "QUERY PLAN": [{ Plan: PlanNode }] })["QUERY PLAN"];
  const walk = (node: PlanNode): readonly string[] => [
    [node["Node Type"], node["Relation Name"], node["Index Name"], node["Index Cond"]]
      .filter((part) => part !== undefined)
      .join(" "),
    ...(node.Plans ?? []).flatMap(walk),
  ];
  return walk(Plan);
}

/** SQLite says SCAN and PostgreSQL Seq Scan for a whole table; an index read from end to end is no better. */
function isScan(step: string): boolean {
  const [, table = ""] =
    /^(?:SCAN|Seq Scan|Parallel Seq Scan|(?:Index|Index Only) Scan) (\w+)/.exec(step) ?? [];
  return growingTables.includes(table) && !step.includes("(");
}
