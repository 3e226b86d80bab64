import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { readSettings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import type { FastifyInstance, FastifyServerOptions } from "fastify";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { createServer } from "../src/index.ts";
import { createMetrics } from "../src/metrics.ts";

const token = "a-token-of-chance-with-forty-signs-in-it";
const bearer = { authorization: `Bearer ${token}` };
const versions = { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false };
const note = (n: number, text = "an invented note") => ({
  format: 1,
  id: `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`,
  caseId: "00000000-0000-4000-8000-00000000ca5e",
  at: "2026-11-25T03:12:00.000Z",
  versions,
  type: "note",
  text,
});
const push = (events: readonly unknown[]) => ({ protocol: 1, sentAt: "2026-11-25T03:12:00.000Z", events });

let pageDir: string;
let store: Store;
let server: FastifyInstance;
let stopping = false;

async function start(
  env: Record<string, string> = {},
  logger?: FastifyServerOptions["logger"],
): Promise<void> {
  const settings = readSettings({ text: "", env });
  if (!settings.ok) throw new RangeError("The settings of the test are sound");
  server = await createServer({
    pageDir,
    records: { store, settings: settings.value, metrics: createMetrics(), isStopping: () => stopping },
    ...(logger === undefined ? {} : { logger }),
  });
}
const send = (payload: unknown, headers: Record<string, string> = bearer) =>
  server.inject({
    method: "POST",
    url: "/api/sync/push",
    headers: { "content-type": "application/json", ...headers },
    payload: typeof payload === "string" ? payload : JSON.stringify(payload),
  });
const pull = (query = "protocol=1&since=0&limit=10", headers: Record<string, string> = bearer) =>
  server.inject({ url: `/api/sync/pull?${query}`, headers });

beforeAll(() => {
  pageDir = mkdtempSync(join(tmpdir(), "steelyard-records-page-"));
  writeFileSync(join(pageDir, "index.html"), "<!doctype html><title>t</title>");
});
afterAll(() => rmSync(pageDir, { recursive: true }));
beforeEach(async () => {
  stopping = false;
  const database = { type: "sqlite", file: ":memory:" } as const;
  store = await openStore({ database, clock: () => "2026-11-25T04:00:00.000Z", newId: randomUUID });
  await store.addSite("main");
  await store.enrolDevice({ site: "main", actor: "command", id: randomUUID(), name: "Resus 1", token });
  await start();
});
afterEach(async () => {
  await server.close();
  await store.close();
});

describe("who may do what", () => {
  it.each(["Bearer ", `Bearer ${token}x`, `Basic ${token}`, `Bearer ${"' OR 1=1 --".padEnd(40)}`, token])(
    "a wrong token is nobody: %s",
    async (authorization) => {
      const reply = await pull(undefined, { authorization });
      expect(reply.statusCode).toBe(401);
      expect(reply.json()).toEqual({ problem: "not-enrolled" });
    },
  );

  it("a revoked device is nobody at once", async () => {
    const [device] = await store.listDevices("main");
    await store.revokeDevice({ site: "main", actor: "command", id: device?.id ?? "" });
    expect((await pull()).statusCode).toBe(401);
  });

  it("an unknown way in says nothing", async () => {
    for (const url of ["/api", "/api/", "/api/none", "/api/sync/push/../../etc"]) {
      const reply = await server.inject({ url, headers: bearer });
      expect(reply.statusCode).toBe(404);
    }
    expect(
      (await server.inject({ method: "DELETE", url: "/api/sync/push", headers: bearer })).json(),
    ).toEqual({
      problem: "not-found",
    });
  });
});

describe("events", () => {
  it("go in from one device and come out at another, with the headers of the page", async () => {
    const reply = await send(push([note(1), { ...note(2), format: 7 }]));
    expect(reply.json()).toMatchObject({
      acknowledged: [note(1).id],
      refused: [{ place: 1, reason: { type: "faulty" } }],
      skewMs: -2_880_000,
    });
    const out = await pull();
    expect(out.json()).toMatchObject({ changes: [{ cursor: 1, event: note(1) }], cursor: 1, more: false });
    expect(out.headers).toMatchObject({ "cache-control": "no-store", "x-content-type-options": "nosniff" });
    expect(out.headers["content-security-policy"]).toContain("default-src 'none'");
  });

  it("of an ancient or a later client are refused in words", async () => {
    for (const protocol of [0, 2, "1.5", undefined]) {
      const reply = await send({ ...push([note(1)]), protocol });
      expect(reply.statusCode).toBe(400);
      expect(reply.json()).toEqual({ problem: "unknown-protocol", reason: "this server speaks protocol 1" });
    }
    expect((await pull("protocol=0&since=0&limit=1")).json().problem).toBe("unknown-protocol");
    expect((await pull()).json().changes).toEqual([]);
  });

  it.each<[what: string, payload: string, status: number]>([
    ["no JSON", "{", 400],
    ["nothing", "", 400],
    ["a list", "[]", 400],
    ["null", "null", 400],
    ["a word too much", JSON.stringify({ ...push([]), admin: true }), 400],
    ["no list of events", JSON.stringify({ ...push([]), events: {} }), 400],
    ["a polluted prototype", '{"__proto__":{"roles":["administrator"]},"protocol":1}', 400],
    ["a polluted constructor", '{"constructor":{"prototype":{"x":1}},"protocol":1}', 400],
    ["too much", JSON.stringify({ ...push([]), events: ["x".repeat(1_100_000)] }), 413],
    ["too deep", `${"[".repeat(100_000)}${"]".repeat(100_000)}`, 400],
  ])("that are %s are refused, and nothing is stored", async (_what, payload, status) => {
    const reply = await send(payload);
    expect(reply.statusCode).toBe(status);
    expect(Object.keys(reply.json())).toContain("problem");
    expect(({} as { roles?: unknown }).roles).toBeUndefined();
    expect((await store.readChanges({ site: "main", since: 0, limit: 1 })).changes).toEqual([]);
  });

  it("of another media type are not looked at", async () => {
    const reply = await send("<events/>", { ...bearer, "content-type": "application/xml" });
    expect([reply.statusCode, reply.json()]).toEqual([415, { problem: "unknown-media-type" }]);
  });

  it.each([
    "protocol=1&since=-1&limit=1",
    "protocol=1&since=0&limit=9999",
    "protocol=1&since=0;DROP TABLE site&limit=1",
  ])("are not pulled by %s", async (query) => {
    expect((await pull(query)).json().problem).toBe("malformed");
    expect(await store.listSites()).toEqual(["main"]);
  });

  it("with quotes and statements in them come back as they were", async () => {
    const text = `'; DROP TABLE case_event; -- "\\ \u0000 \u2028 {{x}} <script>`;
    await send(push([note(1, text)]));
    expect((await pull()).json().changes[0].event.text).toBe(text);
  });
});

describe("operation", () => {
  it("an answer that its schema does not know is an error, and does not leave", async () => {
    const leaking = {
      ...store,
      readChanges: async () => ({ changes: [], cursor: 0, more: false, token: "x" }),
    };
    await server.close();
    const whole = store;
    store = leaking as unknown as Store;
    await start();
    const reply = await pull();
    store = whole;
    expect([reply.statusCode, reply.json()]).toEqual([500, { problem: "server-fault" }]);
  });

  it("too many requests wait, by device and not by address", async () => {
    await server.close();
    await start({ STEELYARD_REQUESTS_PER_MINUTE: "3" });
    const statuses = [];
    for (let i = 0; i < 5; i++) statuses.push((await pull()).statusCode);
    expect(statuses).toEqual([200, 200, 200, 429, 429]);
    expect((await server.inject("/health")).statusCode).toBe(200);
    for (let i = 0; i < 4; i++) await pull(undefined, { authorization: `Bearer ${"guess".repeat(8)}${i}` });
    const guess = await pull(undefined, { authorization: `Bearer ${"guess".repeat(8)}9` });
    expect([guess.statusCode, guess.json().problem]).toEqual([429, "too-many"]);
  });

  it("says that it is up, ready, or stopping, and why the store cannot serve", async () => {
    expect((await server.inject("/ready")).json()).toEqual({ status: "ready" });
    stopping = true;
    expect((await server.inject("/ready")).statusCode).toBe(503);
    stopping = false;
    await store.db.executeQuery({ sql: "PRAGMA query_only = ON", parameters: [] } as never).catch(() => {});
    const pushed = await send(push([note(1)]));
    expect([pushed.statusCode, pushed.json(), pushed.headers["retry-after"]]).toEqual([
      503,
      { problem: "store-read-only" },
      "30",
    ]);
    expect((await server.inject("/ready")).json()).toEqual({ problem: "store-read-only" });
    expect((await server.inject("/health")).json()).toEqual({ status: "up" });
    expect((await server.inject("/metrics")).body).toContain(
      'steelyard_store_trouble_total{trouble="read-only"} 2',
    );
  });

  it("counts and logs without anything of a child, a token or an address of the query", async () => {
    const lines: string[] = [];
    const stream = new PassThrough().on("data", (chunk) => lines.push(String(chunk)));
    await server.close();
    await start({}, { level: "debug", stream });
    await send(push([note(1, "SECRETNOTE"), "SECRETFAULT"]));
    await pull("protocol=1&since=0&limit=10");
    await send('{"SECRET":');
    const metrics = (await server.inject("/metrics")).body;
    expect(metrics).toContain("steelyard_events_acknowledged_total 1");
    expect(metrics).toContain('steelyard_events_refused_total{reason="faulty"} 1');
    const log = lines.join("");
    expect(log).toContain('"route":"/api/sync/push","method":"POST","status":200');
    for (const hidden of ["SECRET", token, "ca5e", "since=0", note(1).id]) expect(log).not.toContain(hidden);
    const outside = await server.inject({ url: "/metrics", remoteAddress: "10.1.2.3" });
    expect(outside.statusCode).toBe(404);
  });
});
