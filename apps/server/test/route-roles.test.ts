import * as v from "valibot";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { routeTable } from "../src/routes/route-table.ts";
import { type Department, startDepartment, type Visitor, visitor } from "./support/department.ts";
import { routeRoles } from "./support/route-roles.ts";

const roles = ["clinician", "reviewer", "researcher", "administrator"] as const;

let department: Department;
const people = new Map<string, Visitor>();
let over: readonly (readonly [string, Visitor])[];

/** What was refused makes nobody wait in the next request. */
async function forget(): Promise<void> {
  await department.store.db.deleteFrom("failed_attempt").execute();
}

/** A session of its own for every request: some of them end it. */
async function session(person: Visitor): Promise<Visitor> {
  await forget();
  const made = await department.accounts.startSession({ person: person.id, by: "test" });
  return visitor(department.server, { ...person, token: made?.token ?? "" });
}

beforeAll(async () => {
  department = await startDepartment({ env: { STEELYARD_REQUESTS_PER_MINUTE: "100000" } });
  for (const role of roles) people.set(role, await department.person(role));
  // So that nobody above is the last administrator.
  const administrator = await department.person(...roles);
  const actor = { site: "main", actor: "console" };
  const [expired, idle, ended, removed, changed, reset] = await Promise.all(
    Array.from({ length: 6 }, () => department.person(...roles)),
  );
  const all = { expired, idle, ended, removed, changed, reset } as unknown as Readonly<
    Record<string, Visitor>
  >;
  const token = (name: string) => ({ person: all[name]?.id ?? "", token: all[name]?.token ?? "" });
  await department.accounts.endSession(token("ended"));
  await department.accounts.change({ ...actor, id: token("removed").person, state: "removed" });
  await department.accounts.change({ ...actor, id: token("changed").person, roles: ["clinician"] });
  await department.accounts.reset({ ...actor, id: token("reset").person, evenLast: false });
  const { db, clock } = department.store;
  const since = (ms: number) => new Date(Date.parse(clock()) - ms).toISOString();
  const put = (name: string, row: { started_at?: string; used_at?: string }) =>
    db.updateTable("session").set(row).where("person", "=", token(name).person).execute();
  await put("expired", { started_at: since(12 * 3_600_000) });
  await put("idle", { used_at: since(30 * 60_000) });
  over = [
    ...Object.entries(all),
    ["invented", visitor(department.server, { ...administrator, token: "A".repeat(43) })],
    ["turned", visitor(department.server, { ...administrator, token: administrator.csrf })],
  ];
});
afterAll(() => department.close());

function ask(who: Visitor, route: string, more: Readonly<Record<string, string>> = {}) {
  const [method, url] = route.split(" ") as ["GET" | "POST", string];
  const send = routeRoles[route]?.send ?? {};
  if (method === "POST") return who.post(url, send, more);
  const query = new URLSearchParams(send as Record<string, string>).toString();
  return department.server.inject({ url: `${url}?${query}`, headers: { ...who.headers, ...more } });
}

describe("who may do what", () => {
  it("is said for every route of the table, and there is no other", () => {
    const table = routeTable.map(({ method, url }) => `${method} ${url}`);
    expect(table.toSorted()).toEqual(Object.keys(routeRoles).sort());
    const printed = department.server.printRoutes({ commonPrefix: false });
    for (const { method, url } of routeTable)
      expect(department.server.hasRoute({ method, url }), url).toBe(true);
    // Beside the table there are the two pages, and nothing else.
    expect(printed.match(/\b(GET|POST)\b/g)).toHaveLength(table.length + 2);
  });

  it.each(Object.entries(routeRoles))("%s", async (route, { may, ok }) => {
    const [open, refused] = [may === "anyone", { anyone: 401, other: 403 }];
    const nobody = open ? ok : refused.anyone;
    expect((await ask(department.anyone, route)).statusCode, "anyone").toBe(nobody);
    const bearer = { authorization: `Bearer ${department.deviceToken}` };
    const device = open || may.includes("device") ? ok : refused.other;
    expect((await ask(department.anyone, route, bearer)).statusCode, "device").toBe(device);
    for (const role of roles) {
      const person = await session(people.get(role) as Visitor);
      const status = open || may.includes(role) ? ok : refused.other;
      const reply = await ask(person, route);
      expect([role, reply.statusCode, status === reply.statusCode ? "" : reply.body]).toEqual([
        role,
        status,
        "",
      ]);
    }
    for (const [name, visitorOver] of over) {
      await forget();
      expect((await ask(visitorOver, route)).statusCode, name).toBe(nobody);
    }
  });

  it("no answer leaves that its schema does not know", async () => {
    for (const route of routeTable) {
      const name = `${route.method} ${route.url}`;
      const { may, ok } = routeRoles[name] ?? { may: "anyone", ok: 0 };
      const role = may === "anyone" ? undefined : may[0];
      const bearer = role === "device" ? { authorization: `Bearer ${department.deviceToken}` } : undefined;
      const person = role === undefined || role === "device" ? undefined : people.get(role);
      await forget();
      const reply = await ask(person === undefined ? department.anyone : await session(person), name, bearer);
      expect(reply.statusCode, name).toBe(ok);
      const schema = route.replies[reply.statusCode];
      if (schema === undefined) {
        expect(reply.statusCode, name).toBeGreaterThanOrEqual(400);
        continue;
      }
      const body: unknown = route.url === "/metrics" ? reply.body : reply.json();
      expect(v.safeParse(schema, body).success, name).toBe(true);
      if (typeof body === "object") {
        expect(v.safeParse(schema, { ...body, secret: 1 }).success, name).toBe(false);
      }
    }
  });
});
