import { randomUUID } from "node:crypto";
import { openStore, type Store } from "@steelyard/records/store";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findPostgres } from "../../../../scripts/find-postgres.ts";
import { rebuildSummaries } from "../../src/store/case-summaries.ts";
import { event, uuid } from "../case/sample-events.ts";
import { useEngines } from "./engines.ts";
import { casesOfLargeSite, fillEvents, filledCaseId, largeSite } from "./fill-events.ts";
import { explainQuery, type Plan, type WatchedStore, watchStore } from "./watch-queries.ts";

const engines = useEngines(findPostgres() !== undefined);
const clock = () => "2027-06-01T00:00:00.000Z";
const size = { events: 12_000, sites: 10 };
const site = largeSite;
const caseId = filledCaseId(site, 100);

/** Each question that the store answers from tables that grow. */
const asked: Readonly<Record<string, (store: Store) => Promise<unknown>>> = {
  "a push": (store) =>
    store.appendEvents({ site, device: "d", actor: "device:d", events: [event(1, 0, { type: "closed" })] }),
  "a page of changes": (store) => store.readChanges({ site, since: 300, limit: 50 }),
  "one case": (store) => store.readCaseEvents({ site, caseId }),
  "the list of cases": (store) => store.listCases({ site, limit: 20 }),
  "an earlier page of that list": (store) =>
    store.listCases({ site, limit: 20, before: `2026-11-25T03:12:00.000Z ${caseId}` }),
  "open cases of some days": (store) =>
    store.listCases({ site, state: "open", from: "2024-01-01", to: "2024-01-31", limit: 20 }),
  "closed cases": (store) => store.listCases({ site, state: "closed", limit: 20 }),
  "later weights due": (store) => store.listCases({ site, due: "weight", limit: 20 }),
  "the weighed cases": (store) => store.latestCases({ site, list: "weighed_at", limit: 50 }),
  "whole cases": (store) => store.readCases({ site, caseIds: [caseId, filledCaseId(site, 5)] }),
  "the audit log of one action": (store) => store.listAudit({ site, action: "cases.read", limit: 20 }),
  "the audit log of one person": (store) => store.listAudit({ site, actor: "person:x", limit: 20 }),
  "several cases": (store) => store.readCases({ site, caseIds: [caseId, filledCaseId(site, 99)] }),
  "the place of an event": async (store) => {
    const [first] = await store.readCaseEvents({ site, caseId });
    return store.cursorOf({ site, id: first?.id ?? "" });
  },
  "a sealed link beside a case": async (store) => {
    await store.putSealedLink({ site, actor: "person:1", caseId, sealed: "sealed" });
    await store.readSealedLink({ site, actor: "person:1", caseId });
  },
  "the casebook": (store) => store.listCases({ site, limit: 20 }),
  "the casebook of some days": (store) =>
    store.listCases({ site, from: "2025-01-01", to: "2025-12-31", limit: 20 }),
  "an earlier page of the casebook": (store) =>
    store.listCases({ site, before: `2025-01-01T00:00:00.000Z ${caseId}`, limit: 20 }),
  "a case by its code": (store) => store.listCases({ site, code: caseId.slice(0, 8), limit: 20 }),
  "the open cases": (store) => store.listCases({ site, state: "open", limit: 20 }),
  "the closed cases": (store) => store.listCases({ site, state: "closed", limit: 20 }),
  "the later weights that are due": (store) => store.listCases({ site, due: "weight", limit: 20 }),
  "the cases of a run chart": (store) => store.latestCases({ site, list: "weighed_at", limit: 20 }),
  "the log of one actor": (store) => store.listAudit({ site, limit: 20, actor: "device:device" }),
  "the latest of the audit log": (store) => store.readAudit({ site, limit: 20 }),
  "an earlier page of the audit log": (store) => store.readAudit({ site, before: 30, limit: 20 }),
  "the whole audit log, verified": (store) => store.verifyAudit(),
  "a purge by policy": (store) =>
    store.purgeCases({
      site,
      actor: "command",
      untouchedSince: "2022-02-01T00:00:00.000Z",
      reason: "retention of 1900 days",
    }),
};

/** Functions that read and write no table that grows without end, or are themselves a way through one of the above. */
const small: readonly string[] = (
  "engine db clock epoch close probe addSite listSites note enrolDevice findDevice listDevices revokeDevice " +
  "addDocument signDocument publishDocument listDocuments findDocument handedOut people"
).split(" ");

it("every function of the store is asked here, or said to touch nothing that grows", async () => {
  const store = await openStore({
    database: { type: "sqlite", file: ":memory:" },
    clock,
    newId: randomUUID,
  });
  const source = Object.values(asked).map(String).join("\n");
  const left = Object.keys(store).filter(
    (name) => !small.includes(name) && !source.includes(`store.${name}(`),
  );
  await store.close();
  expect(left).toEqual([]);
});

describe.each(engines)("with thousands of rows $name", ({ newDatabase }) => {
  let watched: WatchedStore;
  beforeAll(async () => {
    const database = newDatabase();
    await (await openStore({ database, clock, newId: randomUUID })).close();
    fillEvents(database, size);
    watched = await watchStore(database, { clock, newId: randomUUID });
    await rebuildSummaries(watched.store.db);
    await sql`ANALYZE`.execute(watched.store.db);
  }, 60_000);
  afterAll(() => watched.store.close());

  it.each(Object.entries(asked))("answers %s by an index", async (_what, ask) => {
    watched.takeQueries();
    await ask(watched.store);
    const queries = watched.takeQueries();
    const plans: Plan[] = [];
    for (const query of queries)
      plans.push(...[await explainQuery(watched.store, query)].flatMap((p) => p ?? []));
    expect(plans.some(({ sql: text }) => /case_event|case_summary|audit_entry/.test(text))).toBe(true);
    expect(plans.filter(({ scans }) => scans.length > 0)).toEqual([]);
  });

  it("is seen to scan where there is no index for the question", async () => {
    watched.takeQueries();
    await sql`select id from case_event where model = ${"none"}`.execute(watched.store.db);
    const [query] = watched.takeQueries();
    const plan = query && (await explainQuery(watched.store, query));
    expect(plan?.scans).toHaveLength(1);
  });

  it("holds what was filled in as the store itself would have written it", async () => {
    const events = await watched.store.readCaseEvents({ site, caseId });
    expect(events.map(({ type }) => type).slice(0, 3)).toEqual(["case-started", "measurement", "estimate"]);
    expect(new Set(events.map((each) => each.caseId))).toEqual(new Set([caseId]));
    expect(casesOfLargeSite(size)).toBe(109);
    expect(uuid(1)).not.toBe(events[0]?.id);
  });
});
