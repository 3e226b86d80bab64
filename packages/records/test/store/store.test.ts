import { createAccounts, hashPassword, verifyPassword } from "@steelyard/records/accounts";
import { backupStore, restoreStore, type Store } from "@steelyard/records/store";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findPostgres } from "../../../../scripts/find-postgres.ts";
import { migrationSteps } from "../../src/store/migrations/migration-steps.ts";
import { event, sampleCase, uuid } from "../case/sample-events.ts";
import { open, useEngines } from "./engines.ts";
import { addPerson, calibrationOf } from "./sample-documents.ts";

const engines = useEngines(findPostgres() !== undefined);
const from = { site: "resus", device: "tablet", actor: "device:tablet" };
const token = "t".repeat(32);

describe.each(engines)("the records on $name", ({ newDatabase, name }) => {
  let database: ReturnType<typeof newDatabase>;
  let store: Store;
  beforeEach(async () => {
    database = newDatabase();
    store = await open(database);
    await store.addSite("resus");
  });
  afterEach(() => store.close());

  it("keep every event of a case once, in the order it came, through a close", async () => {
    const outcomes = await store.appendEvents({ ...from, events: sampleCase, skewMs: -3_600_000 });
    expect(outcomes).toEqual(sampleCase.map(({ id }) => ({ id, outcome: "stored" })));
    await store.close();
    store = await open(database);
    const caseId = sampleCase[0]?.caseId ?? "";
    expect(await store.readCaseEvents({ site: "resus", caseId })).toEqual(sampleCase);
    const row = await store.db.selectFrom("case_event").selectAll().orderBy("cursor").executeTakeFirst();
    expect(row).toMatchObject({
      cursor: 1,
      skew_ms: -3_600_000,
      model: "2026.1",
      formulary: "2026-11-25",
      calibration: null,
    });
  });

  it("make a resend harmless, whatever the order of its parts, and refuse another event under the same id", async () => {
    await store.appendEvents({ ...from, events: sampleCase });
    const [start] = sampleCase;
    if (start === undefined) throw new RangeError("The sample has a start");
    const turned = Object.fromEntries(Object.entries(start).reverse()) as unknown as typeof start;
    const other = event(2, 0, { type: "note", text: "not the measurement" });
    const outcomes = await store.appendEvents({ ...from, device: "phone", events: [turned, other, turned] });
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(["known", "id-taken", "known"]);
    const { changes } = await store.readChanges({ site: "resus", since: 0, limit: 100 });
    expect(changes).toEqual(sampleCase.map((sample, i) => ({ cursor: i + 1, event: sample })));
  });

  it("give changes page by page, and nothing of another site", async () => {
    await store.addSite("ward");
    await store.appendEvents({ ...from, events: sampleCase });
    await store.appendEvents({ ...from, site: "ward", events: sampleCase.slice(0, 2) });
    const seen: number[] = [];
    let [since, more] = [0, true];
    while (more) {
      const page = await store.readChanges({ site: "resus", since, limit: 4 });
      seen.push(...page.changes.map(({ cursor }) => cursor));
      ({ cursor: since, more } = page);
    }
    expect(seen).toEqual(sampleCase.map((_, i) => i + 1));
    expect((await store.readChanges({ site: "ward", since: 0, limit: 10 })).changes).toHaveLength(2);
    await expect(store.appendEvents({ ...from, site: "unknown", events: sampleCase })).rejects.toThrow(
      "the site as it is not known",
    );
  });

  it("let many write at once without a hole, a double or a cursor that appears late", async () => {
    // Two connections to one SQLite file in one thread would wait for each other: Node's SQLite waits without giving way.
    const second = name === "sqlite" ? store : await open(database);
    const writers = Array.from({ length: 12 }, (_, w) =>
      (w % 2 === 0 ? store : second).appendEvents({
        ...from,
        events: [event(1, 0, { type: "note", text: "by all" }), event(100 + w, 0, { type: "closed" })],
      }),
    );
    const cursors: number[] = [];
    const read = async () => {
      const page = await store.readChanges({ site: "resus", since: cursors.at(-1) ?? 0, limit: 100 });
      cursors.push(...page.changes.map(({ cursor }) => cursor));
    };
    for (let i = 0; i < 10; i++) await read();
    const outcomes = (await Promise.all(writers)).flat();
    await read();
    if (second !== store) await second.close();
    expect(outcomes.filter(({ outcome }) => outcome === "stored")).toHaveLength(13);
    expect(outcomes.filter(({ outcome }) => outcome === "known")).toHaveLength(11);
    expect(cursors).toEqual(Array.from({ length: 13 }, (_, i) => i + 1));
    expect((await store.verifyAudit()).faults).toEqual([]);
  });

  it("go on in order when the clock of the server goes back an hour", async () => {
    await store.close();
    const times = ["2026-11-25T05:00:00.000Z", "2026-11-25T04:00:00.000Z"];
    store = await open(database, { clock: () => times.shift() ?? "2026-11-25T04:00:01.000Z" });
    for (const sample of sampleCase.slice(0, 3)) await store.appendEvents({ ...from, events: [sample] });
    const rows = await store.db.selectFrom("case_event").select(["cursor", "received_at"]).execute();
    expect(
      rows.sort((a, b) => a.cursor - b.cursor).map(({ received_at }) => received_at.slice(11, 19)),
    ).toEqual(["05:00:00", "04:00:00", "04:00:01"]);
    const page = await store.readChanges({ site: "resus", since: 1, limit: 10 });
    expect(page.changes.map(({ cursor }) => cursor)).toEqual([2, 3]);
    expect((await store.verifyAudit()).faults).toEqual([]);
  });

  it("refuse in the engine itself to change or remove what was written", async () => {
    await store.appendEvents({ ...from, events: sampleCase });
    for (const statement of [
      "UPDATE case_event SET payload = '{}'",
      "DELETE FROM case_event",
      "UPDATE audit_entry SET actor = 'nobody'",
      "DELETE FROM audit_entry",
    ]) {
      await expect(sql.raw(statement).execute(store.db), statement).rejects.toThrow("is append-only");
    }
  });

  it("purge old cases by policy, say so to whoever pulls, and take no event of them again", async () => {
    await store.appendEvents({ ...from, events: sampleCase });
    const other = { ...event(50, 0, { type: "closed" }), caseId: uuid(0xbeef) };
    const { changes } = await store.readChanges({ site: "resus", since: 0, limit: 1 });
    expect(changes).toHaveLength(1);
    // The clock of this store has gone on by a second with each write, so the second case is younger.
    const between = store.clock();
    await store.appendEvents({ ...from, events: [other] });
    const policy = { site: "resus", actor: "command", reason: "retention of 365 days" };
    expect(await store.purgeCases({ ...policy, untouchedSince: between })).toEqual({
      cases: 1,
      events: sampleCase.length,
    });
    const left = await store.readChanges({ site: "resus", since: 0, limit: 100 });
    expect(left.changes).toEqual([
      { cursor: 12, event: other },
      { cursor: 13, purgedCaseId: sampleCase[0]?.caseId },
    ]);
    const again = await store.appendEvents({ ...from, events: sampleCase.slice(0, 1) });
    expect(again[0]?.outcome).toBe("case-purged");
    expect((await store.verifyAudit()).faults).toEqual([]);
    expect((await store.readAudit({ site: "resus", limit: 1 }))[0]).toMatchObject({
      action: "cases.purge",
      detail: `{"events":${sampleCase.length},"reason":"retention of 365 days"}`,
    });
  });

  it("know a device by its token until it is revoked", async () => {
    const device = { site: "resus", actor: "command", id: uuid(7), name: "Resus 1", token };
    await expect(store.enrolDevice({ ...device, token: "short" })).rejects.toThrow("at least 32");
    await store.enrolDevice(device);
    expect(await store.findDevice(token)).toMatchObject({ id: uuid(7), site: "resus", name: "Resus 1" });
    expect(await store.findDevice(`${token}x`)).toBeUndefined();
    const kept = await store.db.selectFrom("device").selectAll().executeTakeFirstOrThrow();
    expect(JSON.stringify(kept)).not.toContain(token);
    const revoke = { site: "resus", actor: "command", id: uuid(7) };
    expect(await store.revokeDevice({ ...revoke, site: "ward-not-known" }).catch(() => false)).toBe(false);
    expect(await store.revokeDevice(revoke)).toBe(true);
    expect(await store.revokeDevice(revoke)).toBe(false);
    expect(await store.findDevice(token)).toBeUndefined();
    expect((await store.listDevices("resus"))[0]?.revokedAt).toMatch(/^2026/);
  });

  it("come up to date from every earlier version, with what they held, and never go back", async () => {
    const names = Object.keys(migrationSteps);
    expect(names).toEqual([...names].sort());
    for (const lastMigration of names) {
      const earlier = newDatabase();
      const old = await open(earlier, { lastMigration });
      await old.addSite("resus");
      await sql`INSERT INTO device (id, site, name, token_sha256, enrolled_at) VALUES ('d', 'resus', 'old', 'x', '2026')`.execute(
        old.db,
      );
      const { epoch } = old;
      await old.close();
      const now = await open(earlier);
      expect(now.epoch).toBe(epoch);
      expect((await now.listDevices("resus"))[0]?.name).toBe("old");
      await now.appendEvents({ ...from, events: sampleCase });
      expect((await now.verifyAudit()).faults).toEqual([]);
      await now.close();
    }
    await sql`INSERT INTO kysely_migration (name, timestamp) VALUES ('9999-later', '2099')`.execute(store.db);
    await expect(open(database)).rejects.toThrow("by a later version of Steelyard");
  });

  it("find each thing that was done to the audit log behind their back", async () => {
    for (const sample of sampleCase) await store.appendEvents({ ...from, events: [sample] });
    const without = async (table: string, operation: "update" | "delete", statement: string) => {
      await sql
        .raw(
          name === "sqlite"
            ? `DROP TRIGGER IF EXISTS ${table}_no_${operation}`
            : `ALTER TABLE ${table} DISABLE TRIGGER USER`,
        )
        .execute(store.db);
      await sql.raw(statement).execute(store.db);
      return (await store.verifyAudit()).faults;
    };
    const one = await without(
      "case_event",
      "update",
      "UPDATE case_event SET payload = '{}' WHERE cursor = 4",
    );
    expect(one).toEqual([{ type: "changed-events", site: "resus", position: 4 }]);
    const two = await without(
      "audit_entry",
      "update",
      "UPDATE audit_entry SET actor = 'x' WHERE position = 2",
    );
    expect(two).toContainEqual({ type: "changed-entry", site: "resus", position: 2 });
    const three = await without("case_event", "delete", "DELETE FROM case_event WHERE cursor = 6");
    expect(three).toContainEqual({ type: "missing-events", site: "resus", missing: 1, purged: 0 });
    const four = await without("audit_entry", "delete", "DELETE FROM audit_entry WHERE position = 5");
    expect(four).toContainEqual({ type: "gap", site: "resus", position: 5 });
    const five = await without("audit_entry", "delete", "DELETE FROM audit_entry WHERE position = 11");
    expect(five).toContainEqual({ type: "wrong-end", site: "resus", expected: 11, found: 10 });
  });

  it("come out as a backup of one moment and go into an empty store of any engine, whole or not at all", async () => {
    await store.addSite("ward");
    await store.appendEvents({ ...from, events: sampleCase, skewMs: 1200 });
    await store.appendEvents({ ...from, site: "ward", events: sampleCase.slice(0, 2) });
    await store.enrolDevice({ site: "resus", actor: "console", id: uuid(900), name: "tablet", token });
    const person = await addPerson(store, 1);
    const added = await store.addDocument({
      site: "resus",
      actor: person,
      kind: "calibration",
      label: "first",
      content: calibrationOf(1.1),
    });
    if (!added.ok) throw new RangeError("The calibration is sound");
    await store.signDocument({ site: "resus", actor: person, sha256: added.value.sha256, registration: "x" });
    const limits = { idleMs: 1_800_000, absoluteMs: 43_200_000 };
    const passwords = { cost: { log2N: 4, r: 8, p: 1 }, hash: hashPassword, verify: verifyPassword };
    const accounts = createAccounts({ store, site: "resus", limits, passwords });
    const { code } = await accounts.invite({
      site: "resus",
      actor: "console",
      name: "Cara Hollis",
      roles: ["reviewer"],
    });
    const order = { code, login: "cara", password: "violet kettle sings", address: "10.0.0.1" };
    expect((await accounts.join(order)).ok).toBe(true);
    const lines: string[] = [];
    const rows = await backupStore(store, async (line) => {
      lines.push(line);
    });
    expect(lines).toHaveLength(rows + 2);
    const kept = ["case_event", "audit_entry", "device", "signature", "person", "credential"] as const;
    const all = async (of: Store, table: (typeof kept)[number]) =>
      (await of.db.selectFrom(table).selectAll().execute()).map((row) => JSON.stringify(row)).sort();
    const from2 = async function* (these: readonly string[]): AsyncGenerator<string> {
      yield* these;
    };
    const restored = async (these: readonly string[]) => {
      const target = await open(newDatabase());
      const result = await restoreStore(target, from2(these));
      const sites = await target.listSites();
      return { target, result, sites };
    };

    const good = await restored(lines);
    expect(good.result).toEqual({ ok: true, value: rows });
    for (const table of kept) {
      expect(await all(good.target, table)).toEqual(await all(store, table));
    }
    expect((await good.target.verifyAudit()).faults).toEqual([]);
    // The person is there and the session is not: after a restore people sign in again.
    expect(await good.target.db.selectFrom("session").selectAll().execute()).toEqual([]);
    const there = createAccounts({ store: good.target, site: "resus", limits, passwords });
    expect((await there.signIn(order)).ok).toBe(true);
    // By another epoch devices learn to send again what the backup lacks.
    expect(good.target.epoch).not.toBe(store.epoch);
    expect(await restoreStore(good.target, from2(lines))).toEqual({
      ok: false,
      error: { type: "not-empty" },
    });
    const more = await good.target.appendEvents({ ...from, events: sampleCase });
    expect(new Set(more.map(({ outcome }) => outcome))).toEqual(new Set(["known"]));
    await good.target.close();

    const middle = Math.floor(lines.length / 2);
    const changed = lines.map((line, i) => (i === middle ? line.replace(":", ": ") : line));
    for (const [bad, type] of [
      [lines.slice(0, -1), "damaged"],
      [lines.slice(0, middle), "damaged"],
      [[], "no-backup"],
      [["{}", ...lines], "no-backup"],
      [[(lines[0] ?? "").replace(/"000\d/, '"9999'), ...lines.slice(1)], "other-tables"],
    ] as const) {
      const { target, result, sites } = await restored(bad);
      expect(result.ok ? "ok" : result.error.type).toBe(type);
      expect(sites).toEqual([]);
      await target.close();
    }
    const refused = await restored(changed).catch((error: unknown) => error);
    // Either the checksum or the engine's own rules refuse a changed row; nothing of it stays.
    if (!(refused instanceof Error)) {
      const { target, result, sites } = refused as Awaited<ReturnType<typeof restored>>;
      expect(result.ok).toBe(false);
      expect(sites).toEqual([]);
      await target.close();
    }
  });
});
