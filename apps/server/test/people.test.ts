import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Department, goodPassword, startDepartment } from "./support/department.ts";

let department: Department;
beforeEach(async () => {
  department = await startDepartment();
});
afterEach(() => department.close());

describe("sessions", () => {
  it("a person is somebody by a session, with the roles of this moment", async () => {
    const { person, anyone, store, accounts } = department;
    const visitor = await person("clinician", "reviewer");
    const { csrf, ...rest } = (await visitor.get("/api/session")).json();
    expect(rest).toEqual({
      state: "signed-in",
      person: {
        id: visitor.id,
        name: "Visitor 1",
        login: "visitor-1",
        roles: ["clinician", "reviewer"],
        site: "main",
      },
    });
    expect(csrf).toBe(visitor.csrf);
    expect((await anyone.get("/api/session")).json()).toEqual({ state: "signed-out" });
    const changed = await accounts.change({
      site: "main",
      actor: "console",
      id: visitor.id,
      roles: ["clinician"],
    });
    expect(changed.ok).toBe(true);
    expect((await visitor.get("/api/session")).json()).toEqual({ state: "signed-out" });
    expect((await store.verifyAudit()).faults).toEqual([]);
    const again = await anyone.post("/api/session", { login: visitor.login, password: goodPassword });
    expect(again.json()).toMatchObject({ person: { roles: ["clinician"] } });
  });
});
