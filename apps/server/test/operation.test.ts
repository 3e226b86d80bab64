import { spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { Agent, request as httpRequest } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connect as tlsConnect } from "node:tls";
import { readSettings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createServer } from "../src/index.ts";
import { listenUntilStopped } from "../src/listen-until-stopped.ts";
import { createMetrics } from "../src/metrics.ts";
import { ownOrigin } from "../src/sessions/own-origin.ts";
import { readCertificate, renewCertificate } from "../src/tls.ts";

const token = "a-token-of-chance-with-forty-signs-in-it";
let folder: string;
let store: Store;
let stopping = false;

beforeEach(async () => {
  stopping = false;
  folder = mkdtempSync(join(tmpdir(), "steelyard-operation-"));
  const database = { type: "sqlite", file: join(folder, "records.sqlite") } as const;
  store = await openStore({ database, clock: () => new Date().toISOString(), newId: randomUUID });
  await store.addSite("main");
  await store.enrolDevice({ site: "main", actor: "command", id: randomUUID(), name: "Resus 1", token });
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true });
});

async function serverOf(
  env: Record<string, string> = {},
  parts: { store?: Store; https?: { cert: string; key: string } } = {},
): Promise<FastifyInstance> {
  const settings = readSettings({
    text: "",
    env: { STEELYARD_DATABASE: join(folder, "records.sqlite"), ...env },
  });
  if (!settings.ok) throw new RangeError("The settings of the test are sound");
  const records = {
    store: parts.store ?? store,
    settings: settings.value,
    metrics: createMetrics(),
    isStopping: () => stopping,
  };
  return createServer({ pageDir: folder, records, ...(parts.https && { https: parts.https }) });
}

const note = (n: number) => ({
  format: 1,
  id: `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`,
  caseId: "00000000-0000-4000-8000-00000000ca5e",
  at: "2026-11-25T03:12:00.000Z",
  versions: { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false },
  type: "note",
  text: "invented",
});

describe("stopping", () => {
  function signal(): [heard: Promise<void>, give: () => void] {
    let give = () => {};
    const heard = new Promise<void>((resolve) => {
      give = resolve;
    });
    return [heard, give];
  }

  /** A store that holds every write until it is let go. */
  function holding(): { held: Store; reached: Promise<void>; letGo: () => void } {
    const [reached, tell] = signal();
    const [free, letGo] = signal();
    const held: Store = {
      ...store,
      appendEvents: async (request) => {
        tell();
        await free;
        return store.appendEvents(request);
      },
    };
    return { held, reached, letGo };
  }

  /** Starts to serve; `stop` is what a signal does. */
  async function serve(held: Store, stopWithinMs: number) {
    const server = await serverOf({}, { store: held });
    const [until, stop] = signal();
    const [listening, tell] = signal();
    const ended = listenUntilStopped(server, {
      host: "127.0.0.1",
      port: 0,
      describe: (address) => {
        tell();
        return `Listens for a test: ${address}`;
      },
      onStopping: () => {
        stopping = true;
      },
      until,
      stopWithinMs,
    });
    await listening;
    const { port } = server.addresses()[0] as { port: number };
    return { port, stop, ended };
  }

  interface Reply {
    readonly status: number;
    readonly connection: string | undefined;
    readonly body: string;
  }

  function ask(port: number, agent: Agent, path: string, payload?: unknown): Promise<Reply> {
    return new Promise((resolve, reject) => {
      const headers = { authorization: `Bearer ${token}`, "content-type": "application/json" };
      const method = payload === undefined ? "GET" : "POST";
      const sent = httpRequest({ host: "127.0.0.1", port, path, agent, method, headers }, async (reply) => {
        let body = "";
        for await (const chunk of reply) body += chunk;
        resolve({ status: reply.statusCode ?? 0, connection: reply.headers.connection, body });
      });
      sent.on("error", reject);
      sent.end(payload === undefined ? undefined : JSON.stringify(payload));
    });
  }
  const push = { protocol: 1, sentAt: "2026-11-25T03:12:00.000Z", events: [note(1)] };

  it("acknowledges the push that is on its way, refuses what comes after it, and ends", async () => {
    const { held, reached, letGo } = holding();
    const { port, stop, ended } = await serve(held, 10_000);
    const inFlight = ask(port, new Agent({ keepAlive: true }), "/api/sync/push", push);
    await reached;
    // Half a request holds its connection open through the signal; the other half comes after it.
    const late = connect(port, "127.0.0.1");
    let heard = "";
    late.on("data", (chunk) => {
      heard += chunk;
    });
    const closed = once(late, "close");
    late.write("GET /health HTTP/1.1\r\n");
    await once(late, "connect");
    stop();
    await expect.poll(() => stopping).toBe(true);
    late.write("host: x\r\n\r\n");
    await closed;
    expect(heard).toMatch(/^HTTP\/1.1 503 .*^connection: close\r$/ims);
    await expect(ask(port, new Agent(), "/health")).rejects.toThrow("ECONNREFUSED");
    letGo();
    const reply = await inFlight;
    expect([reply.status, JSON.parse(reply.body).acknowledged]).toEqual([200, [note(1).id]]);
    expect(reply.connection).toBe("close");
    expect(await ended).toBe(0);
    expect((await store.readChanges({ site: "main", since: 0, limit: 9 })).changes).toHaveLength(1);
  });

  it("does not wait for ever for an answer, and nothing that was cut off counts as acknowledged", async () => {
    const { held, reached, letGo } = holding();
    const { port, stop, ended } = await serve(held, 30);
    const cut = ask(port, new Agent(), "/api/sync/push", push);
    const outcome = cut.then(
      () => "answered",
      () => "cut off",
    );
    await reached;
    stop();
    expect(await outcome).toBe("cut off");
    expect(await ended).toBe(0);
    letGo();
  });
});

describe("behind a proxy", () => {
  const from = (remoteAddress: string, forwarded: string) => ({
    remoteAddress,
    headers: { "x-forwarded-for": forwarded },
  });

  it("believes who the client is from the proxy that is trusted, and from nobody else", async () => {
    const server = await serverOf({ STEELYARD_TRUST_PROXY: "10.0.0.1" });
    const metrics = async (by: ReturnType<typeof from>) =>
      (await server.inject({ url: "/metrics", ...by })).statusCode;
    // Metrics are for this machine only, so the status tells which address was believed.
    expect(await metrics(from("10.0.0.1", "127.0.0.1"))).toBe(200);
    expect(await metrics(from("10.0.0.1", "192.0.2.7"))).toBe(404);
    expect(await metrics(from("192.0.2.7", "127.0.0.1"))).toBe(404);
    // What a client wrote itself stands before what the proxy added.
    expect(await metrics(from("10.0.0.1", "127.0.0.1, 192.0.2.7"))).toBe(404);
    await server.close();
  });

  it("counts guesses by the client, who cannot get more by inventing addresses", async () => {
    const server = await serverOf({ STEELYARD_TRUST_PROXY: "10.0.0.1", STEELYARD_REQUESTS_PER_MINUTE: "3" });
    const guess = async (remoteAddress: string, forwarded: string) =>
      (
        await server.inject({
          url: "/api/sync/pull?protocol=1&since=0&limit=1",
          ...from(remoteAddress, forwarded),
        })
      ).statusCode;
    const statuses = [];
    for (let n = 0; n < 5; n++) statuses.push(await guess("192.0.2.7", `198.51.100.${n}`));
    expect(statuses).toEqual([401, 401, 401, 429, 429]);
    // Another client behind the same proxy still has its own.
    expect(await guess("10.0.0.1", "203.0.113.5")).toBe(401);
    await server.close();
  });

  it("makes cookies secure where the trusted proxy says HTTPS, and not because anybody else says so", async () => {
    const settings = readSettings({ text: "", env: { STEELYARD_TRUST_PROXY: "10.0.0.1" } });
    if (!settings.ok) throw new RangeError("The settings of the test are sound");
    const server = await serverOf({ STEELYARD_TRUST_PROXY: "10.0.0.1" });
    const origins: string[] = [];
    // A cookie is secure where this begins with https.
    server.addHook("onRequest", async (request) => {
      origins.push(ownOrigin(settings.value, request));
    });
    const headers = { host: "records.example", "x-forwarded-proto": "https" };
    await server.inject({ url: "/health", remoteAddress: "10.0.0.1", headers });
    await server.inject({ url: "/health", remoteAddress: "192.0.2.7", headers });
    expect(origins).toEqual(["https://records.example", "http://records.example"]);
    await server.close();
  });

  it("tells browsers to stay with HTTPS, which plain HTTP on this machine does not", async () => {
    const proxied = await serverOf({ STEELYARD_TRUST_PROXY: "10.0.0.1" });
    expect((await proxied.inject("/health")).headers["strict-transport-security"]).toContain("max-age=");
    await proxied.close();
    const plain = await serverOf();
    expect((await plain.inject("/health")).headers["strict-transport-security"]).toBeUndefined();
    await plain.close();
  });
});

describe("TLS", () => {
  const have = spawnSync("openssl", ["version"]).status === 0;

  /** A certificate for 127.0.0.1 that says `name`, under the same two file names each time. */
  function makeCertificate(name: string): { certificateFile: string; keyFile: string } {
    const files = { certificateFile: join(folder, "cert.pem"), keyFile: join(folder, "key.pem") };
    const { status, stderr } = spawnSync("openssl", [
      ...[
        "req",
        "-x509",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:prime256v1",
        "-nodes",
        "-days",
        "1",
      ],
      ...["-subj", `/CN=${name}`, "-addext", "subjectAltName=IP:127.0.0.1"],
      ...["-keyout", files.keyFile, "-out", files.certificateFile],
    ]);
    if (status !== 0) throw new Error(`openssl: ${stderr}`);
    return files;
  }

  it("serves with the certificate of the settings, takes up a renewed one, and keeps it when the next is broken", async ({
    skip,
  }) => {
    skip(!have, "SKIPPED: openssl is not installed here");
    const tls = makeCertificate("first");
    const server = await serverOf({}, { https: readCertificate(tls) });
    await server.listen({ host: "127.0.0.1", port: 0 });
    const { port } = server.addresses()[0] as { port: number };
    const said: string[] = [];
    const log = {
      info: (text: string) => void said.push(text),
      error: (_what: object, text: string) => void said.push(text),
    };
    const renew = () => renewCertificate(server.server as never, tls, log);
    /** The name in the certificate that a new connection is shown, checked against that certificate alone. */
    const shown = async (): Promise<unknown> => {
      const socket = tlsConnect({ host: "127.0.0.1", port, ca: readCertificate(tls).cert });
      await once(socket, "secureConnect");
      const { subject } = socket.getPeerCertificate();
      socket.destroy();
      return subject.CN;
    };
    expect(await shown()).toBe("first");
    expect((await server.inject("/health")).headers["strict-transport-security"]).toContain("max-age=");
    makeCertificate("second");
    // Not told yet: the server still shows the first, which the new file does not vouch for.
    await expect(shown()).rejects.toThrow("self-signed");
    renew();
    expect(await shown()).toBe("second");
    const { cert } = readCertificate(tls);
    writeFileSync(tls.certificateFile, "no certificate");
    renew();
    writeFileSync(tls.certificateFile, cert);
    expect(await shown()).toBe("second");
    expect(said).toEqual([
      "The certificate was read again",
      "The new certificate cannot be used; the old one stays",
    ]);
    await server.close();
  });
});

it("every metric that the page on operation names is there", async () => {
  const server = await serverOf();
  const { body } = await server.inject("/metrics");
  await server.close();
  const page = readFileSync(join(import.meta.dirname, "../../../docs/operations.md"), "utf8");
  const named = new Set(page.match(/steelyard_[a-z_]+(?=[{`[ )])/g));
  expect(named.size).toBeGreaterThan(4);
  for (const name of named) expect(body).toContain(`# TYPE ${name.replace(/_(bucket|count|sum)$/, "")} `);
});

describe("the disk", () => {
  it("that is nearly full makes the server not ready, while what still fits is taken", async () => {
    const server = await serverOf({ STEELYARD_LEAST_FREE_BYTES: String(2 ** 52) });
    const ready = await server.inject("/ready");
    expect([ready.statusCode, ready.json()]).toEqual([503, { status: "disk-nearly-full" }]);
    expect((await server.inject("/health")).statusCode).toBe(200);
    const pushed = await server.inject({
      method: "POST",
      url: "/api/sync/push",
      headers: { authorization: `Bearer ${token}`, "content-type": "application/json" },
      payload: JSON.stringify({ protocol: 1, sentAt: "2026-11-25T03:12:00.000Z", events: [note(1)] }),
    });
    expect(pushed.json().acknowledged).toEqual([note(1).id]);
    await server.close();
  });

  it("that has room leaves it ready and is measured; one that is unknown is not", async () => {
    const server = await serverOf({ STEELYARD_LEAST_FREE_BYTES: "1" });
    expect((await server.inject("/ready")).json()).toEqual({ status: "ready" });
    expect((await server.inject("/metrics")).body).toMatch(/^steelyard_disk_free_bytes [1-9]\d*(e\+\d+)?$/m);
    await server.close();
    const elsewhere = await serverOf({ STEELYARD_DATABASE: "postgres://db.invalid/steelyard" });
    expect((await elsewhere.inject("/ready")).json()).toEqual({ status: "ready" });
    expect((await elsewhere.inject("/metrics")).body).not.toMatch(/^steelyard_disk_free_bytes \d/m);
    await elsewhere.close();
    const named = { STEELYARD_DATABASE: "postgres://db.invalid/steelyard", STEELYARD_DISK_FOLDER: folder };
    const watched = await serverOf({ ...named, STEELYARD_LEAST_FREE_BYTES: String(2 ** 52) });
    expect((await watched.inject("/ready")).json()).toEqual({ status: "disk-nearly-full" });
    await watched.close();
  });
});
