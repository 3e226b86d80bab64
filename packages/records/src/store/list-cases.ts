import { type Kysely, sql } from "kysely";
import type { CaseEvent } from "../case/case-event.ts";
import { type CaseRecord, foldCases } from "../case/fold-case.ts";
import type { CaseSummary, CasesQuery } from "../department/casebook-wire.ts";
import type { CaseSummaryRow, Tables } from "./tables.ts";

/** A list of the department, each read by an index of its own. */
type CaseList = "listed_at" | "open_at" | "due_at" | "weighed_at";

interface Days {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** A page of the department's cases, the latest first, and where the next one begins. */
export async function listCases(
  db: Kysely<Tables>,
  { site, state, due, code, before, limit = 50, ...days }: CasesQuery & { readonly site: string },
): Promise<{ readonly cases: readonly CaseSummary[]; readonly next?: string }> {
  const list: CaseList = due === "weight" ? "due_at" : state === "open" ? "open_at" : "listed_at";
  let query = from(db, list, { site, ...days });
  if (code !== undefined) query = query.where("code", "=", code);
  if (state === "closed") query = query.where("closed_at", "is not", null);
  if (state === "open" && list !== "open_at") query = query.where("open_at", "is not", null);
  if (before !== undefined) {
    const [at, id] = before.split(" ");
    query = query.where(sql<boolean>`(${sql.ref(list)}, case_id) < (${at}, ${id})`);
  }
  const rows = await query.limit(limit + 1).execute();
  const last = rows.length > limit ? rows[limit - 1] : undefined;
  return {
    cases: rows.slice(0, limit).map(summaryOf),
    ...(last === undefined ? {} : { next: `${last.started_at} ${last.case_id}` }),
  };
}

/** The latest cases of a list and whether there are earlier ones. */
export async function latestCases(
  db: Kysely<Tables>,
  {
    site,
    list,
    limit,
    ...days
  }: Days & { readonly site: string; readonly list: CaseList; readonly limit: number },
): Promise<{ readonly rows: readonly CaseSummaryRow[]; readonly more: boolean }> {
  const rows = await from(db, list, { site, ...days })
    .limit(limit + 1)
    .execute();
  return { rows: rows.slice(0, limit), more: rows.length > limit };
}

/** Whole cases by their ids, in no order. */
export async function readCases(
  db: Kysely<Tables>,
  { site, caseIds }: { readonly site: string; readonly caseIds: readonly string[] },
): Promise<readonly CaseRecord[]> {
  const records: CaseRecord[] = [];
  for (let i = 0; i < caseIds.length; i += CASES) {
    const rows = await db
      .selectFrom("case_event")
      .select("payload")
      .where("site", "=", site)
      .where("case_id", "in", caseIds.slice(i, i + CASES))
      .execute();
    records.push(...foldCases(rows.map(({ payload }) => JSON.parse(payload) as CaseEvent)));
  }
  return records;
}
const CASES = 100;

function from(
  db: Kysely<Tables>,
  list: CaseList,
  { site, from: first, to }: Days & { readonly site: string },
) {
  let query = db
    .selectFrom("case_summary")
    .selectAll()
    .where("site", "=", site)
    .where(list, "is not", null)
    .orderBy(list, "desc")
    .orderBy("case_id", "desc");
  if (first !== undefined) query = query.where(list, ">=", `${first}T00:00:00.000Z`);
  if (to !== undefined) query = query.where(list, "<=", `${to}T23:59:59.999Z`);
  return query;
}

function summaryOf(row: CaseSummaryRow): CaseSummary {
  const known = <K extends string, V>(key: K, value: V | null): Partial<Record<K, V>> =>
    value === null ? {} : ({ [key]: value } as Record<K, V>);
  return {
    caseId: row.case_id,
    code: row.code,
    startedAt: row.started_at,
    ...known("closedAt", row.closed_at),
    ...known("estimateKg", row.estimate_kg),
    ...known("low95Kg", row.low95_kg),
    ...known("high95Kg", row.high95_kg),
    ...known("idealKg", row.ideal_kg),
    ...known("laterKg", row.later_kg),
    ...known("laterOn", row.later_on),
    doses: row.doses,
    versions: { model: row.model, formulary: row.formulary, ...known("calibration", row.calibration) },
  };
}
