import { randomUUID } from "node:crypto";
import { type DatabaseSettings, openStore, type Store } from "@steelyard/records/store";
import { event } from "../../packages/records/test/case/sample-events.ts";
import {
  casesOfLargeSite,
  eventsOfCase,
  fillEvents,
  filledCaseId,
  largeSite,
} from "../../packages/records/test/store/fill-events.ts";
import { explainQuery, watchStore } from "../../packages/records/test/store/watch-queries.ts";
import { type Quantiles, quantilesOf } from "./quantiles.ts";

export interface Growth {
  readonly engine: "sqlite" | "postgres";
  readonly events: number;
  readonly casesOfLargeSite: number;
  readonly fillSeconds: number;
  readonly bytes: number;
  readonly questions: Readonly<Record<string, Quantiles & { readonly scans: readonly string[] }>>;
}

const sites = 100;
const clock = () => new Date().toISOString();

/** Makes the tables and puts the events in; gives the seconds. */
export async function fill(database: DatabaseSettings, events: number): Promise<number> {
  const start = performance.now();
  await (await openStore({ database, clock, newId: randomUUID })).close();
  fillEvents(database, { events, sites });
  return Math.round((performance.now() - start) / 1_000);
}

/** Each question, of the site that has a tenth of all cases, at places that chance would not make any better. */
function questionsOf(cases: number): Readonly<Record<string, (store: Store, n: number) => Promise<unknown>>> {
  const site = largeSite;
  const place = (n: number) => (n * 7_919) % cases;
  const device = { site, device: "device", actor: "device:device" };
  const fresh = () => ({ ...event(0, 0, { type: "closed" }), id: randomUUID(), caseId: randomUUID() });
  return {
    "push of 1 event": (store) => store.appendEvents({ ...device, events: [fresh()] }),
    "push of 50 events": (store) =>
      store.appendEvents({ ...device, events: Array.from({ length: 50 }, fresh) }),
    "resend of 11 events": async (store, n) => {
      const events = await store.readCaseEvents({ site, caseId: filledCaseId(site, place(n)) });
      return store.appendEvents({ ...device, events });
    },
    "pull of 500 changes": (store, n) =>
      store.readChanges({ site, since: place(n) * eventsOfCase, limit: 500 }),
    "pull with nothing new": (store) => store.readChanges({ site, since: 2 ** 50, limit: 500 }),
    "one case": (store, n) => store.readCaseEvents({ site, caseId: filledCaseId(site, place(n)) }),
    "casebook, latest 50": (store) => store.listCases({ site, limit: 50 }),
    "casebook, 50 from the middle": (store, n) =>
      store.listCases({
        site,
        before: `2024-06-01T00:00:00.000Z ${filledCaseId(site, place(n))}`,
        limit: 50,
      }),
    "a case by its code": (store, n) =>
      store.listCases({ site, code: filledCaseId(site, place(n)).slice(0, 8), limit: 50 }),
    "later weights due, 50": (store) => store.listCases({ site, due: "weight", limit: 50 }),
    "run chart, 500 weighed cases": (store) => store.latestCases({ site, list: "weighed_at", limit: 500 }),
    "purge with nothing to purge": (store) =>
      store.purgeCases({ site, actor: "server", untouchedSince: "2021-01-01T00:00:00.000Z", reason: "none" }),
    "audit, latest 50": (store) => store.readAudit({ site, limit: 50 }),
    "audit, 50 from the middle": (store, n) => store.readAudit({ site, before: place(n) + 50, limit: 50 }),
  };
}

/** Times each question against a store that holds `events`, and looks at the engine's plan for it. */
export async function measureGrowth(
  database: DatabaseSettings,
  { events, fillSeconds, times }: { events: number; fillSeconds: number; times: number },
): Promise<Growth> {
  const cases = casesOfLargeSite({ events, sites });
  const { store, takeQueries } = await watchStore(database, { clock, newId: randomUUID });
  const questions: Record<string, Quantiles & { scans: readonly string[] }> = {};
  for (const [name, ask] of Object.entries(questionsOf(cases))) {
    takeQueries();
    for (let n = 0; n < 5; n++) await ask(store, n);
    const scans: string[] = [];
    for (const query of takeQueries()) scans.push(...((await explainQuery(store, query))?.scans ?? []));
    const taken: number[] = [];
    for (let n = 5; n < times + 5; n++) {
      const start = performance.now();
      await ask(store, n);
      taken.push(performance.now() - start);
    }
    questions[name] = { ...quantilesOf(taken), scans };
  }
  const bytes = await sizeOf(store);
  await store.close();
  return { engine: database.type, events, casesOfLargeSite: cases, fillSeconds, bytes, questions };
}

async function sizeOf({ engine, db }: Store): Promise<number> {
  const sql =
    engine.name === "postgres"
      ? "SELECT pg_database_size(current_database()) AS bytes"
      : "SELECT page_count * page_size AS bytes FROM pragma_page_count(), pragma_page_size()";
  const query = { sql, parameters: [], query: { kind: "RawNode" }, queryId: { queryId: "size" } };
  const { rows } = await db.executeQuery(query as never);
  return Number((rows[0] as { bytes: number }).bytes);
}
