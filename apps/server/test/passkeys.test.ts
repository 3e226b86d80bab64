import { generateKeyPairSync } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Department, startDepartment, type Visitor, visitor } from "./support/department.ts";
import { type Ceremony, createAuthenticator } from "./support/software-authenticator.ts";

const publicUrl = "https://steelyard.hospital.example";
const page = { origin: publicUrl, rpId: "steelyard.hospital.example" };

let department: Department;
let person: Visitor;
beforeEach(async () => {
  department = await startDepartment({ env: { STEELYARD_PUBLIC_URL: publicUrl } });
  person = await department.person("clinician");
});
afterEach(() => department.close());

const begin = async () => (await person.post("/api/passkeys/begin", {})).json().options;
const add = (response: unknown, name = "Phone") => person.post("/api/passkeys", { name, response });
const beginSignIn = async () => (await department.anyone.post("/api/session/passkey/begin", {})).json();
const signIn = (ticket: string, response: unknown) =>
  department.anyone.post("/api/session/passkey", { ticket, response });

/** A key that the person has, with the counter at 5. */
async function added() {
  const key = createAuthenticator();
  const { challenge } = await begin();
  expect((await add(key.register({ ...page, challenge, counter: 5 }))).statusCode).toBe(200);
  return key;
}

describe("adding a passkey", () => {
  it("asks for a key that knows its owner, on this page, and keeps it", async () => {
    const options = await begin();
    expect(options).toMatchObject({
      rp: { id: page.rpId, name: "Steelyard" },
      user: { name: person.login, displayName: "Visitor 1" },
      authenticatorSelection: { residentKey: "required", userVerification: "required" },
      attestation: "none",
    });
    const key = createAuthenticator();
    const reply = await add(key.register({ ...page, challenge: options.challenge }));
    expect(reply.statusCode).toBe(200);
    const listed = (await person.get("/api/passkeys")).json().passkeys;
    expect(listed).toEqual([{ id: reply.json().id, name: "Phone", at: expect.any(String) }]);
    // The authenticator is told which keys it has already, and the same one is not kept twice.
    const again = await begin();
    expect(again.excludeCredentials).toMatchObject([{ id: key.id }]);
    const twice = await add(key.register({ ...page, challenge: again.challenge }));
    expect([twice.statusCode, twice.json()]).toEqual([409, { problem: "known-passkey" }]);
    const { id } = reply.json();
    const stranger = await department.person("administrator");
    expect((await stranger.post("/api/passkeys/remove", { id })).statusCode).toBe(404);
    const elsewhere = await department.accounts.startSession({ person: person.id, by: "passkey" });
    const other = visitor(department.server, { ...person, token: elsewhere?.token ?? "" });
    expect((await person.post("/api/passkeys/remove", { id })).json()).toEqual({ removed: true });
    expect((await other.get("/api/passkeys")).statusCode).toBe(401);
    expect((await person.get("/api/passkeys")).json().passkeys).toEqual([]);
  });

  it.each<[what: string, wrong: Partial<Ceremony>]>([
    ["another challenge", { challenge: "bm90IHRoZSBvbmUgdGhhdCB3YXMgZ2l2ZW4" }],
    ["another origin", { origin: "https://steelyard.evil.example" }],
    ["plain HTTP", { origin: "http://steelyard.hospital.example" }],
    ["another name", { rpId: "evil.example" }],
    ["a sign-in instead", { type: "webauthn.get" }],
    ["nobody verified", { userVerified: false }],
  ])("is refused with %s", async (_what, wrong) => {
    const { challenge } = await begin();
    const reply = await add(createAuthenticator().register({ ...page, challenge, ...wrong }));
    expect([reply.statusCode, reply.json()]).toEqual([422, { problem: "faulty-passkey" }]);
    expect((await person.get("/api/passkeys")).json().passkeys).toEqual([]);
  });

  it("is refused when the challenge was used, renewed, too old or somebody else's", async () => {
    const used = (await begin()).challenge;
    expect((await add(createAuthenticator().register({ ...page, challenge: used }))).statusCode).toBe(200);
    const replayed = createAuthenticator().register({ ...page, challenge: used });
    expect((await add(replayed)).statusCode).toBe(422);
    const first = (await begin()).challenge;
    await begin();
    expect((await add(createAuthenticator().register({ ...page, challenge: first }))).statusCode).toBe(422);
    const old = (await begin()).challenge;
    department.wait(5 * 60_000);
    expect((await add(createAuthenticator().register({ ...page, challenge: old }))).statusCode).toBe(422);
    const other = await department.person("clinician");
    const { challenge } = (await other.post("/api/passkeys/begin", {})).json().options;
    expect((await add(createAuthenticator().register({ ...page, challenge }))).statusCode).toBe(422);
    expect((await add({ id: {}, response: "x" })).statusCode).toBe(422);
  });

  it("wants a sign-in of the last ten minutes, and a page with a name", async () => {
    department.wait(11 * 60_000);
    const late = await person.post("/api/passkeys/begin", {});
    expect([late.statusCode, late.json()]).toEqual([403, { problem: "sign-in-again" }]);
    const plain = await startDepartment();
    const visitorThere = await plain.person("clinician");
    const headers = { host: "127.0.0.1:8317" };
    const reply = await visitorThere.post("/api/passkeys/begin", {}, headers);
    expect([reply.statusCode, reply.json().problem]).toEqual([409, "no-passkeys-here"]);
    const forged = await visitorThere.post("/api/passkeys/begin", {}, { host: "evil.example" });
    expect(forged.json().problem).toBe("no-passkeys-here");
    const local = await visitorThere.post("/api/passkeys/begin", {}, { host: "localhost:8317" });
    expect(local.json().options.rp.id).toBe("localhost");
    await plain.close();
  });
});

describe("signing in with a passkey", () => {
  it("begins a session without a login, under TLS with the cookie of this host only", async () => {
    const key = await added();
    const { ticket, options } = await beginSignIn();
    expect(options.allowCredentials).toBeUndefined();
    const reply = await signIn(ticket, key.answer({ ...page, challenge: options.challenge, counter: 6 }));
    expect(reply.json()).toMatchObject({ state: "signed-in", person: { login: person.login } });
    expect(reply.headers["set-cookie"]).toMatch(
      /^__Host-steelyard=[A-Za-z0-9_-]{43}; Path=\/; HttpOnly; SameSite=Strict; Secure$/,
    );
    expect((await person.get("/api/passkeys")).json().passkeys[0].lastUsedAt).toBeDefined();
    const token = /=([^;]+)/.exec(String(reply.headers["set-cookie"]))?.[1] ?? "";
    const plain = visitor(department.server, { ...person, token });
    // The name without its prefix is not looked at under TLS: a page of another host could set it.
    const named = { ...plain.headers, cookie: `steelyard-session=${token}` };
    expect((await department.server.inject({ url: "/api/passkeys", headers: named })).statusCode).toBe(401);
  });

  it.each<[what: string, wrong: Partial<Ceremony>]>([
    ["another challenge", { challenge: "bm90IHRoZSBvbmUgdGhhdCB3YXMgZ2l2ZW4" }],
    ["another origin", { origin: "https://steelyard.evil.example" }],
    ["another name", { rpId: "evil.example" }],
    ["a registration instead", { type: "webauthn.create" }],
    ["nobody verified", { userVerified: false }],
    ["a counter that went back", { counter: 4 }],
    ["a counter that stood still", { counter: 5 }],
  ])("is refused with %s", async (_what, wrong) => {
    const key = await added();
    const { ticket, options } = await beginSignIn();
    const ceremony = { ...page, challenge: options.challenge, counter: 6 };
    const reply = await signIn(ticket, key.answer({ ...ceremony, ...wrong }));
    expect([reply.statusCode, reply.json()]).toEqual([401, { problem: "wrong-credentials" }]);
    expect(reply.headers["set-cookie"]).toBeUndefined();
    const [refused] = await department.store.readAudit({ site: "main", limit: 1 });
    expect(refused).toMatchObject({ action: "session.refused", subject: "unknown-passkey" });
    // The same key is good for a challenge of its own.
    const next = await beginSignIn();
    const good = key.answer({ ...ceremony, challenge: next.options.challenge });
    expect((await signIn(next.ticket, good)).statusCode).toBe(200);
  });

  it("is refused when it is replayed, by another key, of another ticket, too late, or of somebody removed", async () => {
    const key = await added();
    const first = await beginSignIn();
    const answer = key.answer({ ...page, challenge: first.options.challenge, counter: 6 });
    expect((await signIn(first.ticket, answer)).statusCode).toBe(200);
    expect((await signIn(first.ticket, answer)).statusCode).toBe(401);
    const second = await beginSignIn();
    expect((await signIn(second.ticket, answer)).statusCode).toBe(401);
    const third = await beginSignIn();
    const { privateKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
    const ceremony = { ...page, challenge: third.options.challenge, counter: 7 };
    expect((await signIn(third.ticket, key.answer(ceremony, privateKey))).statusCode).toBe(401);
    const fourth = await beginSignIn();
    department.wait(5 * 60_000);
    const late = key.answer({ ...page, challenge: fourth.options.challenge, counter: 8 });
    expect((await signIn(fourth.ticket, late)).statusCode).toBe(401);
    // A challenge that was given to add a key is none to sign in with.
    const again = await department.person("clinician");
    const { challenge } = (await again.post("/api/passkeys/begin", {})).json().options;
    const [row] = await department.store.db
      .selectFrom("challenge")
      .selectAll()
      .where("challenge", "=", challenge)
      .execute();
    const crossed = key.answer({ ...page, challenge, counter: 9 });
    expect((await signIn(row?.id ?? "", crossed)).statusCode).toBe(401);
    const order = { site: "main", actor: "console", id: person.id, state: "removed" } as const;
    await department.accounts.change(order);
    const last = await beginSignIn();
    const gone = key.answer({ ...page, challenge: last.options.challenge, counter: 10 });
    expect((await signIn(last.ticket, gone)).statusCode).toBe(401);
  });

  it("works while the password is locked, so that a guesser shuts nobody out, and ends with a reset", async () => {
    const key = await added();
    // From the address that everybody here comes from.
    for (let n = 0; n < 40; n++) {
      const login = n < 6 ? person.login : `somebody-${n}`;
      await department.accounts.signIn({ login, password: "wrong", address: "127.0.0.1" });
    }
    const locked = await department.anyone.post("/api/session", { login: person.login, password: "x" });
    expect(locked.json().problem).toBe("locked");
    const first = await beginSignIn();
    const answer = key.answer({ ...page, challenge: first.options.challenge, counter: 6 });
    expect((await signIn(first.ticket, answer)).statusCode).toBe(200);
    const order = { site: "main", actor: "console", id: person.id, evenLast: true };
    await department.accounts.reset(order);
    const second = await beginSignIn();
    const after = key.answer({ ...page, challenge: second.options.challenge, counter: 7 });
    expect((await signIn(second.ticket, after)).statusCode).toBe(401);
  });
});
