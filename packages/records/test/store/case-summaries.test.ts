import type { CaseEvent } from "@steelyard/records/case";
import { backupStore, restoreStore, type Store } from "@steelyard/records/store";
import fc from "fast-check";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findPostgres } from "../../../../scripts/find-postgres.ts";
import { rebuildSummaries } from "../../src/store/case-summaries.ts";
import { summaryRow } from "../../src/store/summary-row.ts";
import { anyEvents, event, sampleCase, uuid } from "../case/sample-events.ts";
import { open, useEngines } from "./engines.ts";

const engines = useEngines(findPostgres() !== undefined);
const from = { site: "resus", device: "tablet", actor: "device:tablet" };
const caseId = sampleCase[0]?.caseId ?? "";
const started = (n: number, day: string, code: string): readonly CaseEvent[] =>
  sampleCase.slice(0, 3).map((sample, i) => ({
    ...sample,
    id: uuid(1000 * n + i),
    caseId: uuid(0xca00 + n),
    at: `${day}T03:12:00.000Z`,
    ...(sample.type === "case-started" ? { code } : {}),
  }));

describe.each(engines)("the list of cases on $name", ({ newDatabase, name }) => {
  let database: ReturnType<typeof newDatabase>;
  let store: Store;
  beforeEach(async () => {
    database = newDatabase();
    store = await open(database);
    await store.addSite("resus");
  });
  afterEach(() => store.close());

  const rows = () =>
    store.db.selectFrom("case_summary").selectAll().orderBy("site").orderBy("case_id").execute();
  const codes = async (query: Partial<Parameters<Store["listCases"]>[0]> = {}) =>
    (await store.listCases({ site: "resus", ...query })).cases.map(({ code }) => code);

  it("is what a fresh fold of the events says, however they came: in any order and pieces, undone, corrected, deleted", async () => {
    let run = 0;
    const pieces = anyEvents.chain((events) =>
      fc.record({
        shuffled: fc.shuffledSubarray([...events], { minLength: events.length }),
        size: fc.integer({ min: 1, max: 5 }),
      }),
    );
    const property = fc.asyncProperty(pieces, async ({ shuffled, size }) => {
      const site = `site-${++run}`;
      await store.addSite(site);
      for (let i = 0; i < shuffled.length; i += size) {
        await store.appendEvents({ ...from, site, events: shuffled.slice(i, i + size) });
      }
      const of = (await rows()).filter((row) => row.site === site);
      const kept = await store.readCaseEvents({ site, caseId });
      const touchedAt = of[0]?.touched_at ?? "";
      expect(of).toEqual([summaryRow(kept, { site, touchedAt })]);
      const last = await sql<{ at: string }>`
        SELECT max(received_at) AS at FROM case_event WHERE site = ${site}`.execute(store.db);
      expect(touchedAt).toBe(last.rows[0]?.at);
    });
    await fc.assert(property, { seed: 20_261_125, numRuns: name === "sqlite" ? 60 : 20 });
    const before = await rows();
    expect(before.length).toBeGreaterThan(10);
    await rebuildSummaries(store.db);
    expect(await rows()).toEqual(before);
  });

  it("holds what was there before there was such a list, and what a purge left", async () => {
    const earlier = newDatabase();
    const old = await open(earlier, { lastMigration: "0005-signatures" });
    await old.addSite("resus");
    for (const [i, sample] of sampleCase.entries()) {
      await sql`INSERT INTO case_event (site, cursor, id, case_id, type, at, device, received_at, model, formulary, payload)
        VALUES ('resus', ${i + 1}, ${sample.id}, ${caseId}, ${sample.type}, ${sample.at}, 'd', '2026-11-25T04:00:00.000Z',
        'm', 'f', ${JSON.stringify(sample)})`.execute(old.db);
    }
    await old.close();
    const now = await open(earlier);
    expect(await now.listCases({ site: "resus" })).toEqual({
      cases: [
        {
          caseId,
          code: "K47-2TP",
          startedAt: "2026-11-25T03:12:00.000Z",
          closedAt: "2026-11-25T03:21:00.000Z",
          estimateKg: 18.02,
          low95Kg: 15.7,
          high95Kg: 20.6,
          idealKg: 17.6,
          laterKg: 18.4,
          laterOn: "2026-11-27",
          doses: 3,
          versions: { model: "2026.1", formulary: "2026-11-25" },
        },
      ],
    });
    const policy = { site: "resus", actor: "command", reason: "retention of 1 days" };
    await now.purgeCases({ ...policy, untouchedSince: "2026-11-26T00:00:00.000Z" });
    expect((await now.listCases({ site: "resus" })).cases).toEqual([]);
    await now.close();
  });

  it("is made again from the events of a backup", async () => {
    await store.appendEvents({ ...from, events: sampleCase });
    const lines: string[] = [];
    await backupStore(store, async (line) => void lines.push(line));
    expect(lines.join("")).not.toContain("case_summary");
    const restored = await open(newDatabase());
    const read = async function* (): AsyncGenerator<string> {
      yield* lines;
    };
    expect((await restoreStore(restored, read())).ok).toBe(true);
    expect((await restored.listCases({ site: "resus" })).cases).toEqual(
      (await store.listCases({ site: "resus" })).cases,
    );
    await restored.close();
  });

  it("is found by day, state, code and what is due, page by page, and nothing of another site", async () => {
    await store.addSite("ward");
    const days = ["2026-11-01", "2026-11-02", "2026-11-02", "2026-11-03"];
    const names = ["A1A-1AA", "B2B-2BB", "C3C-3CC", "D4D-4DD"];
    for (const [i, day] of days.entries()) {
      await store.appendEvents({ ...from, events: started(i, day, names[i] ?? "") });
    }
    await store.appendEvents({ ...from, site: "ward", events: started(9, "2026-11-02", "W9W-9WW") });
    const more = (n: number, id: number, draft: object): CaseEvent =>
      ({ ...event(id, 9_000, draft as never), caseId: uuid(0xca00 + n) }) as CaseEvent;
    await store.appendEvents({
      ...from,
      events: [
        more(0, 501, { type: "closed" }),
        more(1, 502, { type: "later-weight", kg: 18, on: "2026-11-04" }),
        more(3, 503, { type: "deleted" }),
      ],
    });
    expect(await codes()).toEqual(["C3C-3CC", "B2B-2BB", "A1A-1AA"]);
    expect(await codes({ state: "open" })).toEqual(["C3C-3CC", "B2B-2BB"]);
    expect(await codes({ state: "closed" })).toEqual(["A1A-1AA"]);
    expect(await codes({ due: "weight" })).toEqual(["C3C-3CC", "A1A-1AA"]);
    expect(await codes({ due: "weight", state: "open" })).toEqual(["C3C-3CC"]);
    expect(await codes({ due: "weight", state: "closed" })).toEqual(["A1A-1AA"]);
    expect(await codes({ code: "B2B-2BB" })).toEqual(["B2B-2BB"]);
    expect(await codes({ code: "W9W-9WW" })).toEqual([]);
    expect(await codes({ from: "2026-11-02", to: "2026-11-02" })).toEqual(["C3C-3CC", "B2B-2BB"]);
    expect(await codes({ to: "2026-11-01" })).toEqual(["A1A-1AA"]);
    const seen: string[] = [];
    for (let before: string | undefined; ; ) {
      const page = await store.listCases({ site: "resus", limit: 1, before });
      seen.push(...page.cases.map(({ code }) => code));
      before = page.next;
      if (before === undefined) break;
    }
    expect(seen).toEqual(["C3C-3CC", "B2B-2BB", "A1A-1AA"]);
    const weighed = await store.latestCases({ site: "resus", list: "weighed_at", limit: 5 });
    expect(weighed.rows.map(({ code }) => code)).toEqual(["B2B-2BB"]);
    expect(weighed.more).toBe(false);
    const [whole] = await store.readCases({ site: "resus", caseIds: [uuid(0xca01)] });
    expect(whole).toMatchObject({ code: "B2B-2BB", laterWeight: { kg: 18 } });
  });
});
