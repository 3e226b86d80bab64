import { spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readSettings } from "@steelyard/records/settings";
import { backupStore, openStore, restoreStore, type Store } from "@steelyard/records/store";
import type { FastifyInstance } from "fastify";
import { sql } from "kysely";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { findPostgres } from "../../../scripts/find-postgres.ts";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import { createServer } from "../src/index.ts";
import { createMetrics } from "../src/metrics.ts";

const token = "a-token-of-chance-with-forty-signs-in-it";
const now = () => new Date().toISOString();
const have = findPostgres() !== undefined;
if (!have) process.stderr.write("SKIPPED on PostgreSQL: none is installed here.\n");

interface Running {
  readonly store: Store;
  readonly server: FastifyInstance;
}
const running: Running[] = [];
const pageDir = mkdtempSync(join(tmpdir(), "steelyard-postgres-page-"));
afterAll(() => rmSync(pageDir, { recursive: true }));
afterEach(async () => {
  for (const { server, store } of running.splice(0)) {
    await server.close();
    await store.close();
  }
});

/** A server of its own on a database; the first one enrols the device. */
async function start(url: string, clock: () => string = now): Promise<Running> {
  const store = await openStore({ database: { type: "postgres", url }, clock, newId: randomUUID });
  await store.addSite("main");
  if ((await store.findDevice(token)) === undefined) {
    await store.enrolDevice({ site: "main", actor: "command", id: randomUUID(), name: "Resus 1", token });
  }
  const settings = readSettings({ text: "", env: { STEELYARD_REQUESTS_PER_MINUTE: "100000" } });
  if (!settings.ok) throw new RangeError("The settings of the test are sound");
  const records = { store, settings: settings.value, metrics: createMetrics(), isStopping: () => false };
  const made = { store, server: await createServer({ pageDir, records }) };
  running.push(made);
  return made;
}

const note = (n: number, text = "invented") => ({
  format: 1,
  id: `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`,
  caseId: "00000000-0000-4000-8000-00000000ca5e",
  at: "2026-11-25T03:12:00.000Z",
  versions: { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false },
  type: "note",
  text,
});
const headers = { authorization: `Bearer ${token}`, "content-type": "application/json" };
const push = (server: FastifyInstance, events: readonly unknown[]) =>
  server.inject({
    method: "POST",
    url: "/api/sync/push",
    headers,
    payload: JSON.stringify({ protocol: 1, sentAt: now(), events }),
  });
const pull = (server: FastifyInstance, since = 0) =>
  server.inject({ url: `/api/sync/pull?protocol=1&since=${since}&limit=500`, headers });
const storedIds = async ({ db }: Store): Promise<readonly string[]> =>
  (await db.selectFrom("case_event").select("id").orderBy("cursor").execute()).map(({ id }) => id);
/** Ends every other session of the database, as a network that goes or a restart does. */
const cutAll = ({ db }: Store) =>
  sql`SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()`.execute(
    db,
  );

describe.skipIf(!have)("servers on one PostgreSQL", () => {
  let postgres: TemporaryPostgres;
  let count = 0;
  const newDatabase = () => postgres.createDatabase(`d${++count}`);
  beforeAll(async () => {
    postgres = (await startTemporaryPostgres({ durable: false })) as TemporaryPostgres;
  }, 60_000);
  afterAll(() => postgres?.stop());

  it("keep no state: what one is sent the other gives, though its clock is an hour back", async () => {
    const url = newDatabase();
    const first = await start(url);
    const second = await start(url, () => new Date(Date.now() - 3_600_000).toISOString());
    expect((await push(first.server, [note(1)])).json().acknowledged).toEqual([note(1).id]);
    expect((await push(second.server, [note(1), note(2)])).json()).toMatchObject({
      acknowledged: [note(1).id, note(2).id],
      epoch: first.store.epoch,
    });
    for (const { server } of [first, second]) {
      const { changes } = (await pull(server)).json();
      expect(changes.map(({ cursor }: { cursor: number }) => cursor)).toEqual([1, 2]);
    }
    const [device] = await first.store.listDevices("main");
    await first.store.revokeDevice({ site: "main", actor: "command", id: device?.id ?? "" });
    expect((await pull(second.server)).statusCode).toBe(401);
    expect((await second.store.verifyAudit()).faults).toEqual([]);
  });

  it("go on taking events while a backup is made, which is of one moment and restores to SQLite", async () => {
    const { store, server } = await start(newDatabase());
    const before = Array.from({ length: 30 }, (_, n) => note(n));
    await push(server, before);
    const lines: string[] = [];
    let [made, during] = [100, 0];
    const rows = await backupStore(store, async (line) => {
      lines.push(line);
      // Another event after every tenth line: the backup must not see any of them.
      if (lines.length % 10 === 0 && (await push(server, [note(made++)])).statusCode === 200) during++;
    });
    expect(during).toBeGreaterThan(2);
    const target = await openStore({
      database: { type: "sqlite", file: ":memory:" },
      clock: now,
      newId: randomUUID,
    });
    const from = async function* () {
      yield* lines;
    };
    expect(await restoreStore(target, from())).toEqual({ ok: true, value: rows });
    expect(await storedIds(target)).toEqual(before.map(({ id }) => id));
    expect((await target.verifyAudit()).faults).toEqual([]);
    expect(await storedIds(store)).toHaveLength(30 + during);
    await target.close();
  });

  it("lose nothing where connections are cut in the middle of pushes, and say that the store cannot be reached", async () => {
    const url = newDatabase();
    const { store, server } = await start(url);
    const other = await openStore({ database: { type: "postgres", url }, clock: now, newId: randomUUID });
    const acknowledged: string[] = [];
    const statuses = new Set<number>();
    for (let n = 0; n < 40; n++) {
      const sent = push(server, [note(n)]);
      // At another moment of the transaction each time: from before it begins to after its commit.
      for (let wait = 0; wait < n % 20; wait++) await new Promise((resolve) => setImmediate(resolve));
      await cutAll(other);
      const reply = await sent;
      statuses.add(reply.statusCode);
      if (reply.statusCode === 200) acknowledged.push(...reply.json().acknowledged);
      else expect([reply.statusCode, reply.json()]).toEqual([503, { problem: "store-unreachable" }]);
    }
    expect([...statuses].sort()).toEqual([200, 503]);
    expect(await storedIds(other)).toEqual(expect.arrayContaining(acknowledged));
    // The device sends again what nobody acknowledged; what had been committed all the same is known.
    const all = Array.from({ length: 40 }, (_, n) => note(n));
    const again = await push(server, all);
    expect(again.json().acknowledged).toHaveLength(40);
    expect([...(await storedIds(store))].sort()).toEqual(all.map(({ id }) => id));
    expect((await store.verifyAudit()).faults).toEqual([]);
    await other.close();
  });

  it("say so where nothing may be written, and serve again when it may", async () => {
    const url = newDatabase();
    const { store, server } = await start(url);
    const name = sql.id(`d${count}`);
    await push(server, [note(1)]);
    await sql`ALTER DATABASE ${name} SET default_transaction_read_only = on`.execute(store.db);
    await cutAll(store);
    await sql`SELECT pg_terminate_backend(pg_backend_pid())`.execute(store.db).catch(() => {});
    await expect
      .poll(async () => (await push(server, [note(2)])).json())
      .toEqual({ problem: "store-read-only" });
    expect((await server.inject("/ready")).json()).toEqual({ problem: "store-read-only" });
    // A look that finds nothing writes nothing.
    expect((await pull(server, 1)).statusCode).toBe(200);
    await sql`ALTER DATABASE ${name} RESET default_transaction_read_only`
      .execute(store.db)
      .catch(async () => {
        await sql.raw("SET default_transaction_read_only = off").execute(store.db);
        await sql`ALTER DATABASE ${name} RESET default_transaction_read_only`.execute(store.db);
      });
    await sql`SELECT pg_terminate_backend(pg_backend_pid())`.execute(store.db).catch(() => {});
    await expect.poll(async () => (await push(server, [note(2)])).statusCode).toBe(200);
    expect(await storedIds(store)).toEqual([note(1).id, note(2).id]);
  });
});

describe.skipIf(!have)("a PostgreSQL whose disk is full", () => {
  it("refuses in words, keeps what was acknowledged, and goes on when there is room", async ({ skip }) => {
    const folder = mkdtempSync(join(tmpdir(), "steelyard-pg-disk-"));
    const disk = join(folder, "disk");
    mkdirSync(disk);
    // The engine runs as another user.
    chmodSync(folder, 0o755);
    const mounted =
      spawnSync("mount", ["-t", "tmpfs", "-o", "size=44m,mode=755", "tmpfs", disk]).status === 0;
    if (!mounted) rmSync(folder, { recursive: true });
    skip(!mounted, "SKIPPED: a file system cannot be mounted here");
    let postgres: TemporaryPostgres | undefined;
    try {
      postgres = await startTemporaryPostgres({
        durable: true,
        parent: disk,
        initdb: ["--wal-segsize=1"],
        settings: ["max_wal_size=4MB", "min_wal_size=2MB", "shared_buffers=4MB"],
      });
      const { store, server } = await start(postgres?.createDatabase("full") ?? "");
      const acknowledged: string[] = [];
      let refusal: unknown;
      for (let n = 0; refusal === undefined && n < 60_000; n += 200) {
        const reply = await push(
          server,
          Array.from({ length: 200 }, (_, i) => note(n + i, "x".repeat(400))),
        );
        if (reply.statusCode === 200) acknowledged.push(...reply.json().acknowledged);
        else refusal = [reply.statusCode, reply.json()];
      }
      // Where the log of the engine itself has no room it goes down, and is out of reach instead.
      expect([
        [503, { problem: "store-disk-full" }],
        [503, { problem: "store-unreachable" }],
      ]).toContainEqual(refusal);
      expect(acknowledged.length).toBeGreaterThan(200);
      expect((await server.inject("/health")).statusCode).toBe(200);
      expect(spawnSync("mount", ["-o", "remount,size=120m", disk]).status).toBe(0);
      await postgres?.kill();
      await postgres?.start();
      await expect
        .poll(async () => (await push(server, [note(99_999)])).statusCode, { timeout: 10_000 })
        .toBe(200);
      expect(await storedIds(store)).toEqual([...acknowledged, note(99_999).id]);
      expect((await store.verifyAudit()).faults).toEqual([]);
      for (const each of running.splice(0)) {
        await each.server.close();
        await each.store.close();
      }
    } finally {
      await postgres?.stop();
      spawnSync("umount", [disk]);
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
