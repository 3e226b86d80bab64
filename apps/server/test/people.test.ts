import { hashPassword } from "@steelyard/records/accounts";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { findPostgres } from "../../../scripts/find-postgres.ts";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import { type Department, goodPassword, startDepartment, visitor } from "./support/department.ts";

const MINUTE = 60_000;
const engines = findPostgres() === undefined ? ["sqlite"] : ["sqlite", "postgres"];
if (engines.length === 1) process.stderr.write("SKIPPED on PostgreSQL: none is installed here.\n");

let postgres: TemporaryPostgres | undefined;
beforeAll(async () => {
  if (engines.length > 1) postgres = await startTemporaryPostgres({ durable: false });
}, 60_000);
afterAll(() => postgres?.stop());

describe.each(engines)("people on %s", (engine) => {
  let department: Department;
  let count = 0;
  const restart = async (env: Readonly<Record<string, string>> = {}) => {
    const database =
      engine === "sqlite" || postgres === undefined
        ? ({ type: "sqlite", file: ":memory:" } as const)
        : ({ type: "postgres", url: postgres.createDatabase(`people${++count}`) } as const);
    department = await startDepartment({ database, env });
  };
  beforeEach(() => restart());
  afterEach(() => department.close());
  const actions = async () =>
    (await department.store.readAudit({ site: "main", limit: 1000 })).map(({ action }) => action).reverse();
  const signIn = (login: string, password = goodPassword, headers: Readonly<Record<string, string>> = {}) =>
    department.anyone.post("/api/session", { login, password }, headers);
  const cookieOf = (reply: { readonly headers: Readonly<Record<string, unknown>> }) =>
    String(reply.headers["set-cookie"]);

  it("the first administrator comes in by the printed code, once and nobody after", async () => {
    const { anyone, accounts, server, store } = department;
    expect((await anyone.get("/api/session")).json()).toEqual({ state: "set-up" });
    const code = (await accounts.newSetUpCode()) ?? "";
    const other = (await accounts.newSetUpCode()) ?? "";
    const order = { name: "Cara Hollis", login: "cara", password: goodPassword };
    const set = (given: string, more = {}) => anyone.post("/api/set-up", { ...order, code: given, ...more });
    expect((await set("AAAAA-AAAAA-AAAAA-AAAAA")).json()).toEqual({ problem: "wrong-code" });
    expect((await set(code, { password: "password1234" })).json()).toEqual({ problem: "too-common" });
    expect((await set(code, { password: "cara.hollis!!" })).json()).toEqual({ problem: "names-you" });
    expect((await set(code, { password: "short" })).json().problem).toBe("too-short");
    expect((await set(code, { password: "x y".repeat(60) })).json().problem).toBe("too-long");
    // Typed without its hyphens and in small letters it is the same code.
    const done = await set(code.toLowerCase().replaceAll("-", " "));
    expect([done.statusCode, done.json().person.roles]).toEqual([200, ["administrator"]]);
    expect(cookieOf(done)).toMatch(
      /^steelyard-session=[A-Za-z0-9_-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect((await set(other)).json()).toEqual({ problem: "set-up-already" });
    expect(await accounts.newSetUpCode()).toBeUndefined();
    const token = /=([^;]+)/.exec(cookieOf(done))?.[1] ?? "";
    const cara = visitor(server, { id: "", login: "cara", token });
    expect((await cara.get("/api/people")).json().people).toMatchObject([{ login: "cara", state: "active" }]);
    expect(await actions()).toEqual(["device.enrol", "person.set-up", "session.start"]);
    expect((await store.verifyAudit()).faults).toEqual([]);
  });

  it("a code of the first start is good for a day, and guesses of it are counted", async () => {
    const { anyone, accounts, wait } = department;
    const code = (await accounts.newSetUpCode()) ?? "";
    const order = { name: "Cara Hollis", login: "cara", password: goodPassword };
    const set = (given: string) => anyone.post("/api/set-up", { ...order, code: given });
    for (let i = 0; i < 29; i++) await accounts.setUp({ ...order, code: "wrong", address: "127.0.0.1" });
    expect((await set("wrong")).statusCode).toBe(403);
    expect((await set(code)).json().problem).toBe("locked");
    wait(24 * 60 * MINUTE);
    expect((await set(code)).json()).toEqual({ problem: "wrong-code" });
  });

  it("an invitation lets one person in, once, for a week, and another one makes it worthless", async () => {
    const { person, anyone, wait, server } = department;
    const administrator = await person("administrator");
    const invite = async () =>
      (await administrator.post("/api/invitations", { name: "Bo Quist", roles: ["reviewer"] })).json();
    const { code, expiresAt } = await invite();
    expect(expiresAt.slice(0, 10)).toBe("2026-12-02");
    const join = (given: string, login = "bo") =>
      anyone.post("/api/join", { code: given, login, password: goodPassword });
    expect((await join(code, administrator.login)).json()).toEqual({ problem: "login-taken" });
    const both = await Promise.all([join(code), join(code)]);
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([200, 403]);
    const late = await invite();
    wait(7 * 24 * 60 * MINUTE);
    expect((await join(late.code, "late")).json()).toEqual({ problem: "wrong-code" });
    // The administrator's session is over by then as well.
    const back = /=([^;]+)/.exec(cookieOf(await signIn(administrator.login)))?.[1] ?? "";
    const again = visitor(server, { id: "", login: "", token: back });
    const people = (await again.get("/api/people")).json().people;
    const lateId = people.find(({ state }: { state: string }) => state === "invited").id;
    const renewed = await again.post("/api/people/change", { id: lateId, newInvitation: true });
    expect(renewed.json()).toMatchObject({ person: { state: "invited" }, code: expect.any(String) });
    expect((await join(renewed.json().code, "late")).statusCode).toBe(200);
  });

  it("what an administrator changes ends the sessions, and the last one stays", async () => {
    const { person, accounts } = department;
    const only = await person("administrator");
    const change = (body: object) => only.post("/api/people/change", { id: only.id, ...body });
    for (const body of [{ state: "removed" }, { roles: ["clinician"] }, { newInvitation: true }]) {
      const reply = await change(body);
      expect([reply.statusCode, reply.json()]).toEqual([409, { problem: "last-administrator" }]);
    }
    const visitorId = await person("clinician");
    expect((await visitorId.get("/api/session")).json().state).toBe("signed-in");
    const removed = await only.post("/api/people/change", { id: visitorId.id, state: "removed" });
    expect(removed.json().person).toMatchObject({ state: "removed" });
    expect((await visitorId.get("/api/session")).json().state).toBe("signed-out");
    expect((await signIn(visitorId.login)).statusCode).toBe(401);
    const back = await only.post("/api/people/change", { id: visitorId.id, state: "active" });
    expect(back.json().person.state).toBe("active");
    expect((await visitorId.get("/api/session")).json().state).toBe("signed-out");
    expect((await signIn(visitorId.login)).statusCode).toBe(200);
    // At the console even the last one gets a new invitation, and the old password is worth nothing.
    const order = { site: "main", actor: "console", id: only.id, evenLast: true };
    expect((await accounts.reset(order)).ok).toBe(true);
    expect((await signIn(only.login)).statusCode).toBe(401);
    await department.store.addSite("other");
    expect((await accounts.change({ ...order, site: "other", state: "removed" })).ok).toBe(false);
  });

  it("a session is new at every sign-in, and ends when it is idle, old, or signed out", async () => {
    const { person, anyone, wait, server, store } = department;
    const first = await person("clinician");
    // Fixation: a token that was there before, known or invented, is not taken over.
    const planted = "F".repeat(43);
    const reply = await signIn(first.login, goodPassword, { cookie: `steelyard-session=${planted}` });
    const token = /=([^;]+)/.exec(cookieOf(reply))?.[1] ?? "";
    expect([planted, first.token]).not.toContain(token);
    expect((await visitor(server, { ...first, token: planted }).get("/api/passkeys")).statusCode).toBe(401);
    const over = await first.post("/api/session", { login: first.login, password: goodPassword });
    expect(over.statusCode).toBe(200);
    expect((await first.get("/api/passkeys")).statusCode).toBe(401);

    const second = visitor(server, { ...first, token });
    for (let minutes = 0; minutes < 12 * 60 - 20; minutes += 20) {
      expect((await second.get("/api/passkeys")).statusCode).toBe(200);
      wait(20 * MINUTE);
    }
    wait(20 * MINUTE);
    expect((await second.get("/api/passkeys")).statusCode).toBe(401);
    const idle = await person("clinician");
    wait(30 * MINUTE);
    expect((await idle.get("/api/passkeys")).statusCode).toBe(401);

    const out = await person("clinician");
    const ended = await out.post("/api/session/end", {});
    expect([ended.json(), cookieOf(ended)]).toEqual([
      { state: "signed-out" },
      "steelyard-session=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0",
    ]);
    expect((await out.get("/api/passkeys")).statusCode).toBe(401);
    // Two cookies of one name are none: which of them is the own one cannot be told.
    const two = await person("clinician");
    const headers = { cookie: `steelyard-session=${planted}; steelyard-session=${two.token}` };
    expect((await server.inject({ url: "/api/passkeys", headers })).statusCode).toBe(401);
    expect((await anyone.get("/api/passkeys")).headers["www-authenticate"]).toBe("Session");
    const kept = await store.db.selectFrom("session").select("token_sha256").execute();
    expect(JSON.stringify(kept)).not.toContain(two.token);
  });

  it("another password ends the other sessions, and wants the one before it", async () => {
    const { person, server, accounts } = department;
    const here = await person("clinician");
    const elsewhere = await accounts.startSession({ person: here.id, by: "test" });
    const there = visitor(server, { ...here, token: elsewhere?.token ?? "" });
    const next = "slow green barges at dusk";
    const change = (current: string, to = next) => here.post("/api/password", { current, next: to });
    expect((await change("wrong")).statusCode).toBe(401);
    expect((await change(goodPassword, "password1234")).json()).toEqual({ problem: "too-common" });
    expect((await change(goodPassword, goodPassword)).statusCode).toBe(422);
    expect((await change(goodPassword)).json()).toEqual({ changed: true });
    expect((await here.get("/api/passkeys")).statusCode).toBe(200);
    expect((await there.get("/api/passkeys")).statusCode).toBe(401);
    expect((await signIn(here.login)).statusCode).toBe(401);
    // The same sentence typed on a keyboard that composes its signs otherwise.
    const composed = "crème brûlée à midi";
    const again = await here.post("/api/password", { current: next, next: composed.normalize("NFD") });
    expect(again.json()).toEqual({ changed: true });
    expect((await signIn(here.login, composed.normalize("NFC"))).statusCode).toBe(200);
  });

  it("a person sees the own sessions and no other's, and ends the others against the password", async () => {
    const { person, server, accounts, wait } = department;
    const here = await person("clinician");
    const stranger = await person("clinician");
    const elsewhere = async () => {
      const begun = await accounts.startSession({ person: here.id, by: "test" });
      return visitor(server, { ...here, token: begun?.token ?? "" });
    };
    const list = async (who = here) =>
      (await who.get("/api/sessions")).json().sessions as readonly { id: string; isThis: boolean }[];
    const end = (body: object, who = here) => who.post("/api/sessions/end", body);
    const [second, third, fourth] = [await elsewhere(), await elsewhere(), await elsewhere()];
    expect((await list()).map(({ isThis }) => isThis)).toEqual([false, false, false, true]);
    expect(await list(stranger)).toMatchObject([{ isThis: true }]);
    const text = JSON.stringify(await list());
    for (const { token } of [here, second, third, fourth]) expect(text).not.toContain(token);
    const id = (await list(second)).find(({ isThis }) => isThis)?.id;
    const own = (await list()).find(({ isThis }) => isThis)?.id;
    expect((await end({ password: "wrong", id })).json()).toEqual({ problem: "wrong-credentials" });
    for (const [who, which] of [
      [stranger, id],
      [here, own],
    ] as const)
      expect((await end({ password: goodPassword, id: which }, who)).json()).toEqual({
        problem: "unknown-session",
      });
    expect((await second.get("/api/passkeys")).statusCode).toBe(200);
    expect((await end({ password: goodPassword, id })).json()).toEqual({ ended: 1 });
    expect((await second.get("/api/passkeys")).statusCode).toBe(401);
    expect((await third.get("/api/passkeys")).statusCode).toBe(200);
    expect((await end({ password: goodPassword })).json()).toEqual({ ended: 2 });
    expect((await fourth.get("/api/passkeys")).statusCode).toBe(401);
    expect((await stranger.get("/api/passkeys")).statusCode).toBe(200);
    expect((await actions()).filter((action) => action === "session.end-others")).toHaveLength(2);
    await elsewhere();
    wait(29 * MINUTE);
    expect(await list()).toHaveLength(2);
    wait(2 * MINUTE);
    // Nobody has used the other one for half an hour: it is over, and not on the list.
    expect(await list()).toMatchObject([{ isThis: true }]);
  });

  it("guesses wait longer and longer, at once or one by one, and an administrator opens a shut login", async () => {
    const { person, accounts, wait, store, hashes } = department;
    const administrator = await person("administrator");
    const target = await person("clinician");
    const guess = (login: string, n: number, password = "wrong") =>
      accounts.signIn({ login, password, address: `10.0.0.${n}` });
    // Twenty at once from twenty addresses: five are judged.
    const before = hashes();
    const burst = await Promise.all(Array.from({ length: 20 }, (_, n) => guess(target.login, n)));
    const kinds = burst.map((done) => (done.ok ? "in" : done.error.type));
    expect(kinds.filter((kind) => kind === "wrong-credentials")).toHaveLength(5);
    expect(kinds.filter((kind) => kind === "locked")).toHaveLength(15);
    expect(hashes() - before).toBe(5);
    expect((await signIn(target.login)).json()).toMatchObject({ problem: "locked" });
    // The delay doubles: half a minute, a minute, two, .., a quarter of an hour.
    for (const minutes of [0.5, 1, 2, 4, 8, 15, 15]) {
      wait(minutes * MINUTE - 1000);
      expect(await guess(target.login, 30)).toMatchObject({ error: { type: "locked" } });
      wait(1000);
      expect(await guess(target.login, 31)).toMatchObject({ error: { type: "wrong-credentials" } });
    }
    for (let failures = 12; failures < 50; failures++) {
      wait(15 * MINUTE);
      await guess(target.login, 100 + failures);
    }
    wait(20 * 60 * MINUTE);
    expect(await guess(target.login, 32, goodPassword)).toMatchObject({ error: { type: "locked" } });
    const back = await accounts.signIn({ login: administrator.login, password: goodPassword, address: "x" });
    const token = back.ok ? back.value.token : "";
    const again = visitor(department.server, { ...administrator, token });
    const people = (await again.get("/api/people")).json().people;
    expect(people.find(({ id }: { id: string }) => id === target.id).state).toBe("locked");
    await again.post("/api/people/change", { id: target.id, unlock: true });
    expect((await guess(target.login, 33, goodPassword)).ok).toBe(true);
    const refused = (await actions()).filter((action) => action === "session.refused");
    expect(refused).toHaveLength(50);
    expect((await store.verifyAudit()).faults).toEqual([]);
  }, 30_000);

  it("an unknown login is answered like a known one: same words, same work, same delays", async () => {
    const { person, accounts, hashes } = department;
    const known = await person("clinician");
    const removed = await person("clinician");
    await accounts.change({ site: "main", actor: "console", id: removed.id, state: "removed" });
    const answers = [];
    for (const login of [known.login, "nobody-at-all", removed.login, "not a login at all '--"]) {
      const before = hashes();
      const words = [];
      for (let n = 0; n < 6; n++) {
        const done = await accounts.signIn({ login, password: "wrong", address: `10.1.0.${n}` });
        words.push(done.ok ? "in" : done.error.type);
      }
      answers.push({ words, hashes: hashes() - before });
    }
    expect(answers[0]?.words).toEqual([...Array<string>(5).fill("wrong-credentials"), "locked"]);
    for (const answer of answers) expect(answer).toEqual(answers[0]);
  });

  it("one address guesses at many logins 30 times, and not more", async () => {
    const { accounts } = department;
    const kinds = [];
    for (let n = 0; n < 33; n++) {
      const done = await accounts.signIn({ login: `somebody-${n}`, password: "wrong", address: "10.2.0.1" });
      kinds.push(done.ok ? "in" : done.error.type);
    }
    expect(kinds.indexOf("locked")).toBe(30);
  });

  it("devices are enrolled and revoked on the page, and the token is shown once", async () => {
    const { person, server } = department;
    const administrator = await person("administrator");
    const { id, token } = (await administrator.post("/api/devices", { name: "Bay 4" })).json();
    const pull = () =>
      server.inject({
        url: "/api/sync/pull?protocol=1&since=0&limit=1",
        headers: { authorization: `Bearer ${token}` },
      });
    expect((await pull()).statusCode).toBe(200);
    const listed = await administrator.get("/api/devices");
    expect(listed.body).not.toContain(token);
    expect(listed.json().devices).toContainEqual({ id, name: "Bay 4", enrolledAt: expect.any(String) });
    expect((await administrator.post("/api/devices/revoke", { id })).json()).toEqual({ revoked: true });
    expect((await pull()).statusCode).toBe(401);
  });

  it("a hash at a lower cost is made anew when its owner signs in", async () => {
    const { person, store } = department;
    const { login, id } = await person("clinician");
    const row = () => store.db.selectFrom("credential").select("password").where("person", "=", id);
    const password = await hashPassword(goodPassword, { log2N: 1, r: 8, p: 1 });
    await store.db.updateTable("credential").set({ password }).where("person", "=", id).execute();
    expect((await signIn(login)).statusCode).toBe(200);
    expect((await row().executeTakeFirst())?.password).toMatch(/^scrypt\$4\$8\$1\$/);
    expect((await signIn(login)).statusCode).toBe(200);
  });
});
