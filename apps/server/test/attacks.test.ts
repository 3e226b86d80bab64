import { connect } from "node:net";
import { PassThrough } from "node:stream";
import fc from "fast-check";
import type { FastifyInstance, LightMyRequestResponse } from "fastify";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findPostgres } from "../../../scripts/find-postgres.ts";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import { routeTable } from "../src/routes/route-table.ts";
import {
  type Department,
  goodPassword,
  startDepartment,
  type Visitor,
  visitor,
} from "./support/department.ts";
import { routeRoles } from "./support/route-roles.ts";

const everyRole = ["clinician", "reviewer", "researcher", "administrator"] as const;
const plenty = { STEELYARD_REQUESTS_PER_MINUTE: "100000" };
const engines = findPostgres() === undefined ? ["sqlite"] : ["sqlite", "postgres"];
const sampleOf = (method: string, url: string) => routeRoles[`${method} ${url}`]?.send ?? {};
const posts = routeTable.filter(({ method }) => method === "POST").map(({ url }) => url);
const personPosts = posts.filter((url) => {
  const may = routeRoles[`POST ${url}`]?.may;
  return may !== "anyone" && may !== undefined && !may.includes("device");
});

let department: Department;
let insider: Visitor;
let postgres: TemporaryPostgres | undefined;
beforeAll(async () => {
  if (engines.length > 1) postgres = await startTemporaryPostgres({ durable: false });
  department = await startDepartment({ env: plenty });
  insider = await department.person(...everyRole);
}, 60_000);
afterAll(async () => {
  await department.close();
  await postgres?.stop();
});

/** A session of its own, since some routes end it; and nobody waits for what was refused before. */
async function session(of: Department = department, who: Visitor = insider): Promise<Visitor> {
  await of.store.db.deleteFrom("failed_attempt").execute();
  const made = await of.accounts.startSession({ person: who.id, by: "test" });
  return visitor(of.server, { ...who, token: made?.token ?? "" });
}
const audited = async () => (await department.store.readAudit({ site: "main", limit: 1 }))[0]?.position ?? 0;

describe("a page of somebody else", () => {
  it.each(personPosts)("cannot have a browser that is signed in do POST %s", async (url) => {
    const other = await session();
    const sample = sampleOf("POST", url);
    const attempts: readonly (readonly [problem: string, headers: Record<string, string>])[] = [
      ["wrong-csrf", { "x-steelyard-csrf": "" }],
      ["wrong-csrf", { "x-steelyard-csrf": other.csrf }],
      ["wrong-csrf", { "x-steelyard-csrf": "A".repeat(43) }],
      ["wrong-csrf", { "x-steelyard-csrf": "é".repeat(43) }],
      ["wrong-origin", { origin: "https://evil.example" }],
      ["wrong-origin", { origin: "null" }],
      ["wrong-origin", { origin: "http://localhost:8080" }],
      ["wrong-origin", { "sec-fetch-site": "cross-site" }],
      ["wrong-origin", { "sec-fetch-site": "same-site" }],
    ];
    const own = await department.person(...everyRole);
    const before = await audited();
    for (const [problem, headers] of attempts) {
      const reply = await own.post(url, sample, headers);
      expect([headers, reply.statusCode, reply.json()]).toEqual([headers, 403, { problem }]);
    }
    expect(await audited()).toBe(before);
    const good = await own.post(url, sample, {
      origin: "http://localhost:80",
      "sec-fetch-site": "same-origin",
    });
    expect([403, good.statusCode]).not.toEqual([403, 403]);
  });

  it.each(posts)("can send a form or a text without asking, and POST %s reads neither", async (url) => {
    const own = await session();
    for (const type of [
      "text/plain",
      "application/x-www-form-urlencoded",
      "multipart/form-data; boundary=x",
    ]) {
      const reply = await own.post(url, sampleOf("POST", url), { "content-type": type });
      expect([type, reply.statusCode < 500 && reply.statusCode >= 400]).toEqual([type, true]);
    }
  });

  it("cannot sign a browser in as somebody else, or read anything", async () => {
    const { anyone, server } = department;
    const order = { login: insider.login, password: goodPassword };
    const reply = await anyone.post("/api/session", order, { origin: "https://evil.example" });
    expect([reply.statusCode, reply.headers["set-cookie"]]).toEqual([403, undefined]);
    const asked = await server.inject({
      method: "OPTIONS",
      url: "/api/people",
      headers: { origin: "https://evil.example", "access-control-request-method": "POST" },
    });
    expect(asked.statusCode).toBe(404);
    const read = await server.inject({ url: "/api/session", headers: { origin: "https://evil.example" } });
    expect(Object.keys(read.headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
  });

  it("is told apart by the address that the settings give, whatever host was asked for", async () => {
    const named = await startDepartment({ env: { STEELYARD_PUBLIC_URL: "https://steelyard.example" } });
    const person = await named.person("clinician");
    const end = async (headers: Record<string, string>) =>
      (await person.post("/api/session/end", {}, headers)).statusCode;
    expect(await end({ host: "evil.example", origin: "https://evil.example" })).toBe(403);
    expect(await end({ host: "steelyard.example", origin: "http://steelyard.example" })).toBe(403);
    expect(await end({ host: "inside:8317", origin: "https://steelyard.example" })).toBe(200);
    await named.close();
  });
});

describe("every answer", () => {
  it("has the headers that keep a page from doing more than it should, and is not kept", async () => {
    const own = await session();
    const replies: [string, LightMyRequestResponse][] = [["/", await department.anyone.get("/")]];
    for (const { method, url } of routeTable) {
      replies.push([url, await (method === "GET" ? own.get(url) : department.anyone.post(url, {}))]);
    }
    replies.push(["/api/none", await own.get("/api/none")], ["/none", await own.get("/none")]);
    for (const [url, { headers }] of replies) {
      expect(headers["content-security-policy"], url).toMatch(/^default-src 'none';script-src 'self';/);
      expect(headers["content-security-policy"], url).not.toMatch(/unsafe|\*|http:|data:/);
      expect(headers, url).toMatchObject({
        "x-content-type-options": "nosniff",
        "x-frame-options": "DENY",
        "referrer-policy": "no-referrer",
        "cross-origin-opener-policy": "same-origin",
        "cross-origin-resource-policy": "same-origin",
        "permissions-policy": expect.stringContaining("geolocation=()"),
      });
      expect(headers["x-powered-by"] ?? headers.server, url).toBeUndefined();
      if (url.startsWith("/api/")) expect(headers["cache-control"], url).toBe("no-store");
    }
  });
});

describe("a body", () => {
  const deep = `${'{"a":'.repeat(50_000)}1${"}".repeat(50_000)}`;
  it.each(posts)("that is no request is refused by POST %s, in one word", async (url) => {
    const text = JSON.stringify(sampleOf("POST", url));
    const bodyBytes = routeTable.find((route) => route.url === url && route.method === "POST")?.bodyBytes;
    const bodies: readonly (readonly [string, string, number])[] = [
      ["no JSON", "{", 400],
      ["nothing", "", 400],
      ["a list", "[]", 400],
      ["null", "null", 400],
      ["a number", "7", 400],
      ["deep", deep, 400],
      ["large", JSON.stringify({ a: "x".repeat((bodyBytes ?? 1_048_576) + 1) }), 413],
      ["a word too much", text.replace(/\}$/, `${text === "{}" ? "" : ","}"admin":true}`), 400],
      ["a prototype", text.replace("{", '{"__proto__":{"roles":["administrator"]},').replace(",}", "}"), 400],
      [
        "a constructor",
        text.replace("{", '{"constructor":{"prototype":{"roles":["administrator"]}},').replace(",}", "}"),
        400,
      ],
    ];
    for (const [what, body, status] of bodies) {
      // A device's route is asked by the device, the others by somebody who may do everything.
      const device = routeRoles[`POST ${url}`]?.may.includes("device") ?? false;
      const who = device ? department.anyone : await department.person(...everyRole);
      const bearer = device ? { authorization: `Bearer ${department.deviceToken}` } : undefined;
      const reply = await who.post(url, body, bearer);
      expect([what, reply.statusCode, Object.keys(reply.json())[0]]).toEqual([what, status, "problem"]);
      expect(({} as { roles?: unknown }).roles).toBeUndefined();
    }
  });
});

describe("a request", () => {
  it("leads to no file outside of the page", async () => {
    const paths = [
      "/../package.json",
      "/%2e%2e/package.json",
      "/..%2fpackage.json",
      "/%2e%2e%2f%2e%2e%2fetc/passwd",
      "/assets/../../etc/passwd",
      "/..\\..\\etc\\passwd",
      "/%5c..%5cetc%5cpasswd",
      "//etc/passwd",
      "/.env",
      "/index.html%00.txt",
      "/%c0%ae%c0%ae/etc/passwd",
    ];
    for (const url of paths) {
      const { statusCode, body } = await department.anyone.get(url);
      expect([url, statusCode >= 400 && statusCode < 500]).toEqual([url, true]);
      expect(body).not.toMatch(/root:|steelyard\/server/);
    }
  });

  it("cannot hide another one behind it", async () => {
    const { anyone: _anyone, ...own } = await startDepartment();
    await own.server.listen({ host: "127.0.0.1", port: 0 });
    const hidden = "GET /api/session HTTP/1.1\r\nHost: localhost\r\n\r\n";
    const head = "POST /api/session HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n";
    for (const [what, text] of [
      ["two lengths", `${head}Content-Length: 2\r\nContent-Length: 60\r\n\r\n{}${hidden}`],
      [
        "length and chunks",
        `${head}Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n${hidden}`,
      ],
      ["an encoding that is none", `${head}Transfer-Encoding: xchunked\r\n\r\n0\r\n\r\n${hidden}`],
      ["a length with a sign", `${head}Content-Length: +2\r\n\r\n{}${hidden}`],
      ["a blank before the colon", `${head}Content-Length : 2\r\n\r\n{}${hidden}`],
      [
        "a bare line feed in a chunk",
        `${head}Transfer-Encoding: chunked\r\n\r\n1;\n\r\n{}\r\n0\r\n\r\n${hidden}`,
      ],
      ["a header folded", `${head}X: a\r\n Content-Length: 60\r\nContent-Length: 2\r\n\r\n{}`],
    ] as const) {
      const answer = await say(own.server, text);
      expect([what, answer.split("HTTP/1.1 ").length - 1]).toEqual([what, 1]);
      expect([what, answer.slice(9, 12)]).toEqual([what, "400"]);
    }
    await own.close();
  });

  it("that says one word twice is refused", async () => {
    const twice = await department.server.inject({
      url: "/api/sync/pull?protocol=1&since=0&limit=1&limit=2",
      headers: { authorization: `Bearer ${department.deviceToken}` },
    });
    expect([twice.statusCode, twice.json().problem]).toEqual([400, "malformed"]);
  });

  it("puts nothing of its own into a header of the answer", async () => {
    const own = await session();
    const planted = "x\r\nSet-Cookie: planted=1";
    for (const { method, url } of routeTable) {
      const sample = Object.fromEntries(Object.keys(sampleOf(method, url)).map((key) => [key, planted]));
      const query = new URLSearchParams(sample).toString();
      const reply = await (method === "POST" ? own.post(url, sample) : own.get(`${url}?${query}`));
      expect(JSON.stringify(reply.headers)).not.toContain("planted");
    }
  });

  it("is one of 30 a minute where it tries passwords or codes, whatever the rest may do", async () => {
    const own = await startDepartment({ env: plenty });
    const order = { login: "nobody", password: "x" };
    const statuses = [];
    for (let i = 0; i < 32; i++) statuses.push((await own.anyone.post("/api/session", order)).json().problem);
    expect(statuses.slice(-3)).toEqual(["locked", "too-many", "too-many"]);
    expect((await own.anyone.get("/api/session")).statusCode).toBe(200);
    await own.close();
  });
});

describe.each(engines)("statements of SQL on %s", (engine) => {
  const pieces = fc.constantFrom(
    "'",
    '"',
    "''",
    "\\",
    "\\'",
    "`",
    ";",
    "--",
    "/*",
    "*/",
    "%",
    "_",
    "$1",
    "?",
    ":a",
    "\u0000",
    "\ud800",
    "\u02bc",
    " OR 1=1",
    "' OR 'a'='a",
    "') OR ('a'='a",
    "'; DROP TABLE person; --",
    "' UNION SELECT token_sha256, 1, 2 FROM session --",
    "'||(SELECT password FROM credential LIMIT 1)||'",
    "'; UPDATE person SET roles='administrator'; --",
    "1; SELECT pg_sleep(5)",
    "x",
    "00000000-0000-4000-8000-00000000dead",
  );
  const hostile = fc.array(pieces, { minLength: 1, maxLength: 4 }).map((parts) => parts.join(""));

  it("in any text of any route are text", async () => {
    const database =
      engine === "sqlite" || postgres === undefined
        ? ({ type: "sqlite", file: ":memory:" } as const)
        : ({ type: "postgres", url: postgres.createDatabase("injection") } as const);
    const own = await startDepartment({ database, env: plenty });
    const { store, accounts } = own;
    const mighty = await own.person(...everyRole);
    await own.person("administrator");
    let count = 2;
    await store.addSite("elsewhere");
    const elsewhere = { site: "elsewhere", actor: "console" } as const;
    await accounts.invite({ ...elsewhere, name: "SECRETPERSON", roles: ["clinician"] });
    await store.addDocument({ ...elsewhere, kind: "formulary", label: "SECRETLABEL", content: "{}" });
    const hashes = await store.db.selectFrom("credential").select("password").execute();
    const routes = routeTable.filter(({ url }) => !["/health", "/ready", "/metrics"].includes(url));
    const routeNames = routes.map(({ method, url }) => `${method} ${url}`);
    const attack = async (
      route: string,
      by: Visitor,
      texts: { readonly texts: readonly string[]; readonly place: number | undefined },
    ) => {
      const [method, url] = route.split(" ") as ["GET" | "POST", string];
      const sent = withTexts(sampleOf(method, url), texts);
      const isDevice = routeRoles[route]?.may.includes("device") ?? false;
      const who = isDevice ? own.anyone : await session(own, by);
      const device = isDevice ? { authorization: `Bearer ${own.deviceToken}` } : {};
      const asked = Object.keys(sent).length === 0 ? { x: texts.texts[0] } : sent;
      const query = new URLSearchParams(
        Object.entries(asked).map(([key, value]): [string, string] => [key, String(value)]),
      ).toString();
      const reply = await (method === "POST"
        ? who.post(url, sent, device)
        : own.server.inject({ url: `${url}?${query}`, headers: { ...who.headers, ...device } }));
      const bad = reply.statusCode < 500 ? "" : `${JSON.stringify(sent)} ${reply.body}`;
      expect([route, bad]).toEqual([route, ""]);
      expect(reply.body).not.toMatch(/SECRETPERSON|SECRETLABEL|scrypt\$|syntax|SQLITE|relation/);
    };
    // The worst in every place of every route, and then anything in any.
    for (const route of routeNames) {
      const [method = "", url = ""] = route.split(" ");
      // Some routes count the requests of each person.
      const by = await own.person(...everyRole);
      count += 1;
      for (let place = 0; place < textsIn(sampleOf(method, url)); place++) {
        for (const text of ["x\u0000'", "\ud800'", "' OR 'a'='a"])
          await attack(route, by, { texts: [text], place });
      }
    }
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...routeNames),
        fc.array(hostile, { minLength: 1, maxLength: 3 }),
        fc.option(fc.nat({ max: 9 }), { nil: undefined }),
        (route, texts, place) => attack(route, mighty, { texts, place }),
      ),
      { numRuns: 200, seed: 20261125 },
    );
    expect(await store.listSites()).toEqual(["elsewhere", "main"]);
    expect(await accounts.list("elsewhere")).toHaveLength(1);
    const administrators = (await accounts.list("main")).filter(({ roles }) =>
      roles.includes("administrator"),
    );
    expect(new Set(administrators.map(({ name }) => name.replace(/\d+/, "")))).toEqual(new Set(["Visitor "]));
    expect(administrators).toHaveLength(count);
    const after = await store.db.selectFrom("credential").select("password").execute();
    expect(after).toEqual(expect.arrayContaining(hashes));
    expect((await store.verifyAudit()).faults).toEqual([]);
    await own.close();
  }, 60_000);
});

describe("the log", () => {
  it("has no secret, no name and nothing of a child, whoever does what", async () => {
    const lines: string[] = [];
    const stream = new PassThrough().on("data", (chunk) => lines.push(String(chunk)));
    const own = await startDepartment({ logger: { level: "trace", stream }, env: plenty });
    const code = (await own.accounts.newSetUpCode()) ?? "";
    const secret = "SECRETpass violet kettle";
    const first = { code, name: "SECRETname", login: "secretlogin", password: secret };
    const set = await own.anyone.post("/api/set-up", first);
    expect(set.statusCode).toBe(200);
    const token = /=([^;]+)/.exec(String(set.headers["set-cookie"]))?.[1] ?? "";
    const person = visitor(own.server, { id: "", login: "", token });
    await own.anyone.post("/api/session", { login: "secretlogin", password: "SECRETwrong" });
    await own.anyone.post("/api/session", { login: "SECRETunknown", password: "SECRETwrong" });
    await own.anyone.post("/api/session", '{"password":"SECRETbroken');
    const invited = (
      await person.post("/api/invitations", { name: "SECRETtwo", roles: ["reviewer"] })
    ).json();
    await own.anyone.post("/api/join", { code: invited.code, login: "secretjoin", password: "short" });
    await person.post("/api/password", { current: secret, next: "SECRETnext slow barges" });
    const enrolled = (await person.post("/api/devices", { name: "SECRETdevice" })).json();
    await person.get("/api/people?q=SECRETquery");
    await person.get("/api/SECRETpath");
    // A fault of the server itself: the message of its error stays inside as well.
    await own.store.db.schema.dropTable("session").execute();
    expect((await person.get("/api/people")).statusCode).toBe(500);
    const log = lines.join("");
    expect(log.match(/"route":"\/api\/session","method":"POST","status":(200|401)/g)).toHaveLength(2);
    expect(log).toContain("A fault of the server");
    const hidden = [/secret/i, code, token, person.csrf, invited.code, enrolled.token, own.deviceToken];
    for (const secretText of hidden) expect(log).not.toMatch(secretText);
    await own.store.close();
    await own.server.close();
  });
});

/** A request with some or all of its texts replaced; what else it holds stays. */
function withTexts(
  value: Readonly<Record<string, unknown>>,
  { texts, place }: { readonly texts: readonly string[]; readonly place: number | undefined },
): Record<string, unknown> {
  const total = textsIn(value);
  let n = -1;
  const walk = (inner: unknown): unknown => {
    if (typeof inner === "string") {
      n += 1;
      return place === undefined || place % total === n ? texts[n % texts.length] : inner;
    }
    if (Array.isArray(inner)) return inner.map(walk);
    if (typeof inner !== "object" || inner === null) return inner;
    return Object.fromEntries(Object.entries(inner).map(([key, part]) => [key, walk(part)]));
  };
  return walk(value) as Record<string, unknown>;
}
function textsIn(value: unknown): number {
  return JSON.stringify(value).match(/(?:[:[,])"/g)?.length || 1;
}

/** Everything that the server answers to these bytes until it closes the connection or says no more. */
function say(server: FastifyInstance, text: string): Promise<string> {
  const { port } = server.server.address() as { readonly port: number };
  return new Promise((resolve) => {
    let answer = "";
    const socket = connect(port, "127.0.0.1", () => socket.write(text));
    socket.setTimeout(500, () => socket.destroy());
    socket.on("data", (chunk) => {
      answer += String(chunk);
    });
    socket.on("error", () => {});
    socket.on("close", () => resolve(answer));
  });
}
