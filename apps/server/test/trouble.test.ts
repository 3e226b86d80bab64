import { spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readSettings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import type { FastifyInstance } from "fastify";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createServer } from "../src/index.ts";
import { createMetrics } from "../src/metrics.ts";

const token = "a-token-of-chance-with-forty-signs-in-it";
const clock = () => new Date().toISOString();
let folder: string;
let store: Store;
let server: FastifyInstance;

const note = (n: number, text = "invented") => ({
  format: 1,
  id: `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`,
  caseId: "00000000-0000-4000-8000-00000000ca5e",
  at: "2026-11-25T03:12:00.000Z",
  versions: { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false },
  type: "note",
  text,
});
const body = (events: readonly unknown[]) =>
  JSON.stringify({ protocol: 1, sentAt: "2026-11-25T03:12:00.000Z", events });
const send = (events: readonly unknown[]) =>
  server.inject({
    method: "POST",
    url: "/api/sync/push",
    headers: { "content-type": "application/json", authorization: `Bearer ${token}` },
    payload: body(events),
  });

async function start(file: string): Promise<void> {
  store = await openStore({ database: { type: "sqlite", file }, clock, newId: randomUUID });
  await store.addSite("main");
  await store.enrolDevice({ site: "main", actor: "command", id: randomUUID(), name: "Resus 1", token });
  const settings = readSettings({ text: "", env: {} });
  if (!settings.ok) throw new RangeError("The settings of the test are sound");
  const metrics = createMetrics();
  const records = { store, settings: settings.value, metrics, isStopping: () => false };
  server = await createServer({ pageDir: folder, records });
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "steelyard-trouble-"));
});
afterEach(async () => {
  await server.close();
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Pushes until the disk is full; gives the ids that were acknowledged. */
async function fill(): Promise<readonly string[]> {
  const acknowledged: string[] = [];
  for (let n = 1; n < 5_000; n += 20) {
    const reply = await send(Array.from({ length: 20 }, (_, i) => note(n + i, "x".repeat(400))));
    if (reply.statusCode !== 200) {
      expect([reply.statusCode, reply.json()]).toEqual([503, { problem: "store-disk-full" }]);
      return acknowledged;
    }
    acknowledged.push(...reply.json().acknowledged);
  }
  throw new RangeError("The disk was never full");
}

async function storedIds(): Promise<readonly string[]> {
  const rows = await store.db.selectFrom("case_event").select("id").orderBy("cursor").execute();
  return rows.map(({ id }) => id);
}

describe("a full disk", () => {
  it("by quota of the file: says so, keeps what it acknowledged, goes on when there is room", async () => {
    await start(join(folder, "records.sqlite"));
    await sql`PRAGMA max_page_count = 240`.execute(store.db);
    const acknowledged = await fill();
    expect(acknowledged.length).toBeGreaterThan(50);
    expect(await storedIds()).toEqual(acknowledged);
    expect((await server.inject("/health")).statusCode).toBe(200);
    await sql`PRAGMA max_page_count = 100000`.execute(store.db);
    expect((await send([note(9_999)])).json().acknowledged).toEqual([note(9_999).id]);
    expect((await store.verifyAudit()).faults).toEqual([]);
  });

  it("of a real file system of 2 MB: the same, and whole after a restart", async ({ skip }) => {
    const disk = join(folder, "disk");
    mkdirSync(disk);
    const mounted = spawnSync("mount", ["-t", "tmpfs", "-o", "size=2m", "tmpfs", disk]).status === 0;
    if (!mounted) await start(join(folder, "records.sqlite"));
    skip(!mounted, "SKIPPED: a file system cannot be mounted here");
    try {
      await start(join(disk, "records.sqlite"));
      const acknowledged = await fill();
      expect(acknowledged.length).toBeGreaterThan(50);
      expect((await server.inject("/metrics")).body).toContain(
        'steelyard_store_trouble_total{trouble="disk-full"} 1',
      );
      await server.close();
      await store.close();
      expect(spawnSync("mount", ["-o", "remount,size=8m", disk]).status).toBe(0);
      const database = { type: "sqlite", file: join(disk, "records.sqlite") } as const;
      store = await openStore({ database, clock, newId: randomUUID });
      expect(await storedIds()).toEqual(acknowledged);
      expect((await store.verifyAudit()).faults).toEqual([]);
    } finally {
      await store.close();
      spawnSync("umount", [disk]);
    }
  });
});

it("a database that may not be written says so, and serves again when it may", async () => {
  await start(join(folder, "records.sqlite"));
  await sql`PRAGMA query_only = ON`.execute(store.db);
  const reply = await send([note(1)]);
  expect([reply.statusCode, reply.json()]).toEqual([503, { problem: "store-read-only" }]);
  await sql`PRAGMA query_only = OFF`.execute(store.db);
  expect((await send([note(1)])).json().acknowledged).toEqual([note(1).id]);
});

describe("a network that is lost in the middle of a push", () => {
  /** Sends the first `share` of a push over a socket and is gone. */
  async function sendPart(events: readonly unknown[], share: number): Promise<void> {
    const { port } = server.addresses()[0] as { port: number };
    const payload = body(events);
    const head = `POST /api/sync/push HTTP/1.1\r\nhost: x\r\nauthorization: Bearer ${token}\r\ncontent-type: application/json\r\ncontent-length: ${payload.length}\r\n\r\n`;
    const whole = head + payload;
    const socket = connect(port, "127.0.0.1");
    await new Promise<void>((resolve, reject) => {
      socket.on("error", reject);
      socket.write(whole.slice(0, Math.ceil(whole.length * share)), () => resolve());
    });
    // Half closed would wait for the answer; a device out of reach just goes.
    await new Promise((resolve) => setImmediate(resolve));
    socket.resetAndDestroy();
  }

  it("stores nothing of half a push, and all of a whole one once, whoever hears the answer", async () => {
    await start(join(folder, "records.sqlite"));
    await server.listen({ host: "127.0.0.1", port: 0 });
    await sendPart([note(1), note(2)], 0.7);
    expect(await storedIds()).toEqual([]);
    await sendPart([note(1), note(2)], 1);
    await expect.poll(storedIds).toEqual([note(1).id, note(2).id]);
    const again = await send([note(1), note(2), note(3)]);
    expect(again.json()).toMatchObject({ acknowledged: [note(1).id, note(2).id, note(3).id], refused: [] });
    expect(await storedIds()).toHaveLength(3);
  });
});
