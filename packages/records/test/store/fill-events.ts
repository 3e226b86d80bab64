import { spawnSync } from "node:child_process";
import { hash } from "node:crypto";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import type { CaseEvent } from "@steelyard/records/case";
import type { DatabaseSettings } from "@steelyard/records/store";
import { findPostgres } from "../../../../scripts/find-postgres.ts";
import { sampleCase } from "../case/sample-events.ts";

/** Events of one invented case, and so of every case that is filled in. */
export const eventsOfCase: number = sampleCase.length;
/** The first site has a tenth of all cases; the others share the rest. */
export const largeSite = "site-0";

export interface FillOptions {
  readonly events: number;
  readonly sites: number;
}

/** Cases of each site, by its number. */
function casesOfSites({ events, sites }: FillOptions): readonly number[] {
  const cases = Math.round(events / eventsOfCase);
  const large = sites === 1 ? cases : Math.round(cases / 10);
  const each = sites === 1 ? 0 : Math.round((cases - large) / (sites - 1));
  return Array.from({ length: sites }, (_, i) => (i === 0 ? large : each));
}

/** Cases of the first site; its cursors are those times the events of a case, in the order of cases. */
export function casesOfLargeSite(options: FillOptions): number {
  return casesOfSites(options)[0] ?? 0;
}

/** The id of a case that was filled in. */
export function filledCaseId(site: string, number: number): string {
  return uuidOf(hash("md5", `${site}/${number}`));
}

function uuidOf(hex: string): string {
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20)}`;
}

/**
 * Fills a database that has its tables with cases, purged ones and the audit log of many sites by statements that make rows in the
 * engine: ten million in minutes. The log has places and no true hashes: it is there to be read, and does not verify.
 */
export function fillEvents(database: DatabaseSettings, options: FillOptions): void {
  const text = statements(database.type, options).join(";\n");
  if (database.type === "sqlite") {
    const file = new DatabaseSync(database.file);
    file.function("uuid_of", { deterministic: true }, (key) => uuidOf(hash("md5", String(key))));
    file.exec(
      "PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = -2000000; PRAGMA temp_store = MEMORY",
    );
    file.exec(`PRAGMA foreign_keys = OFF; BEGIN; ${text}; COMMIT; ANALYZE; PRAGMA journal_mode = WAL`);
    file.close();
    return;
  }
  const psql = join(findPostgres() ?? "", "psql");
  const uuid = `CREATE FUNCTION pg_temp.uuid_of(key text) RETURNS text LANGUAGE sql IMMUTABLE AS $$
    SELECT overlay(overlay(md5(key) placing '4' from 13) placing '8' from 17)::uuid::text $$;`;
  const input = `SET synchronous_commit = off; SET session_replication_role = replica; ${uuid} BEGIN; ${text.replaceAll("uuid_of(", "pg_temp.uuid_of(")}; COMMIT; VACUUM ANALYZE;`;
  const { status, stderr } = spawnSync(psql, ["-q", "-v", "ON_ERROR_STOP=1", database.url], {
    input,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`Cannot fill: ${stderr.slice(0, 500)}`);
}

function statements(engine: "sqlite" | "postgres", options: FillOptions): readonly string[] {
  const series = (count: number) =>
    engine === "postgres"
      ? `generate_series(0, ${count - 1}) AS series(k)`
      : `(WITH RECURSIVE n(k) AS (SELECT 0 UNION ALL SELECT k + 1 FROM n WHERE k + 1 < ${count}) SELECT k FROM n) AS series`;
  /** Five years from 2022 on, evenly. */
  const at = (count: number, j: string) => {
    const seconds = `(k * ${Math.floor((5 * 365 * 86_400) / count)} + ${j} * 60)`;
    return engine === "postgres"
      ? `to_char(timestamp '2022-01-01' + ${seconds} * interval '1 second', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`
      : `strftime('%Y-%m-%dT%H:%M:%fZ', 1640995200 + ${seconds}, 'unixepoch')`;
  };
  /** Keeps an inner query whole, so that its ids are made once and not at each place where they are used. */
  const fence = engine === "postgres" ? "OFFSET 0" : "LIMIT -1";
  const sqlText = (value: string) => `'${value.replaceAll("'", "''")}'`;
  // Of every fifth case nobody wrote the later weight: a note stands in its place, so that something is due.
  const instead = { ...sampleCase.at(-3), type: "note", text: "Transferred before weighing" } as CaseEvent;
  const template = [...sampleCase, instead].map((event, j) => {
    const payload = JSON.stringify({ ...event, id: "@id", caseId: "@case", at: "@at" });
    return `SELECT ${j} AS j, ${sqlText(event.type)} AS type, ${sqlText(payload)} AS body`;
  });
  const versions = "'2026.1', '2026-11-25', NULL";
  return casesOfSites(options).flatMap((count, number) => {
    const site = sqlText(`site-${number}`);
    const key = `'site-${number}/' || k`;
    const last = count * eventsOfCase;
    // A site that has kept its cases for as long as it then keeps them has purged as many as it holds.
    const purged = count;
    return [
      `INSERT INTO site (id, last_cursor, audit_count) VALUES (${site}, ${last + purged}, ${2 * count})`,
      `INSERT INTO case_event (site, cursor, id, case_id, type, at, device, received_at, skew_ms, model, formulary, calibration, payload)
       SELECT ${site}, k * ${eventsOfCase} + place + 1, id, case_id, type, at, 'device', at, 0, ${versions},
              replace(replace(replace(body, '@id', id), '@case', case_id), '@at', at)
       FROM (SELECT k, CASE j WHEN ${eventsOfCase} THEN j - 1 ELSE j END AS place, type, body, uuid_of(${key}) AS case_id,
                    uuid_of(${key} || '/' || j) AS id, ${at(count, "j")} AS at
             FROM ${series(count)} CROSS JOIN (${template.join(" UNION ALL ")}) AS template
             WHERE j <> CASE WHEN k % 5 = 0 THEN ${eventsOfCase - 1} ELSE ${eventsOfCase} END ${fence}) AS made`,
      `INSERT INTO case_summary (site, case_id, code, started_at, listed_at, due_at, weighed_at, closed_at, estimate_kg, low95_kg,
              high95_kg, ideal_kg, later_kg, later_on, doses, model, formulary, calibration, touched_at)
       SELECT ${site}, uuid_of(${key}), substr(uuid_of(${key}), 1, 8), at, at, CASE WHEN k % 5 = 0 THEN at END,
              CASE WHEN k % 5 <> 0 THEN at END, at, 18.02, 15.7, 20.6, 17.6, CASE WHEN k % 5 <> 0 THEN 18.4 END,
              CASE WHEN k % 5 <> 0 THEN '2026-11-27' END, 4, ${versions}, at
       FROM (SELECT k, ${at(count, "0")} AS at FROM ${series(count)}) AS made`,
      `INSERT INTO purged_case (site, cursor, case_id, at, events, reason)
       SELECT ${site}, ${last} + k + 1, uuid_of('purged/' || ${key}), ${at(purged, "0")}, 11, 'retention of 365 days'
       FROM ${series(purged)}`,
      `INSERT INTO audit_entry (site, position, at, actor, action, subject, detail, previous_hash, hash)
       SELECT ${site}, k * 2 + 1 + j, ${at(count, "j")}, 'device:' || uuid_of('device'), CASE j WHEN 0 THEN 'cases.append' ELSE 'cases.read' END,
              uuid_of('device'), '{"first":' || (k * ${eventsOfCase} + 1) || ',"last":' || ((k + 1) * ${eventsOfCase}) || '}',
              '${"0".repeat(64)}', '${"0".repeat(64)}'
       FROM ${series(count)} CROSS JOIN (SELECT 0 AS j UNION ALL SELECT 1) AS two`,
    ];
  });
}
