import { describe, expect, it } from "vitest";
import { hashOf, routeOf, screensFor } from "./department-screens.ts";
import { type DepartmentEvent, type DepartmentState, emptyDepartment, update } from "./department-state.ts";

const ada = { id: "1", name: "Ada Quill", login: "ada", roles: ["administrator"], site: "resus" } as const;
const signedIn = (person: typeof ada | { id: string } = ada): DepartmentEvent => ({
  type: "session-told",
  session: { state: "signed-in", person: { ...ada, ...person }, csrf: "c" },
});
const over: DepartmentEvent = {
  type: "refused",
  problem: { type: "refused", status: 401, problem: "signed-out" },
};
const after = (...events: readonly DepartmentEvent[]): DepartmentState =>
  events.reduce(update, emptyDepartment);
const people: DepartmentEvent = { type: "answered", address: "/api/people", value: ["Ada"] };

describe("update()", () => {
  it("keeps what is on the screen when the session ends, and goes on with it when the same person is back", () => {
    const ended = after(signedIn(), people, over);
    expect(ended.session).toMatchObject({ state: "signed-in", isOver: true });
    expect(ended.answers["/api/people"]).toMatchObject({ state: "ready" });
    const back = update(ended, signedIn());
    expect(back.session).toMatchObject({ isOver: false });
    expect(back.answers["/api/people"]).toMatchObject({ state: "ready" });
  });

  it("forgets the passphrase of the names when the session ends, at sign-out and for another person", () => {
    const typed: DepartmentEvent = { type: "passphrase-typed", text: "larch seven otter" };
    const proven = after(signedIn(), typed, { type: "passphrase-proven" });
    expect(proven.passphrase).toEqual({ text: "larch seven otter", isProven: true });
    expect(update(proven, signedIn()).passphrase).toEqual(proven.passphrase);
    const ends: readonly DepartmentEvent[] = [
      over,
      { type: "session-told", session: { state: "signed-out" } },
      signedIn({ id: "2" }),
      { type: "passphrase-forgotten" },
    ];
    for (const end of ends) expect(update(proven, end).passphrase, end.type).toBeUndefined();
  });

  it("shows another person nothing of what the one before saw", () => {
    expect(after(signedIn(), people, over, signedIn({ id: "2" })).answers).toEqual({});
    const out: DepartmentEvent = { type: "session-told", session: { state: "signed-out" } };
    expect(after(signedIn(), people, out).answers).toEqual({});
  });

  it("does not take a refusal for the end of the session, nor somebody at work for away", () => {
    const refused: DepartmentEvent = {
      type: "refused",
      problem: { type: "refused", status: 409, problem: "own-work" },
    };
    expect(after(signedIn(), refused).session).toMatchObject({ isOver: false });
    const away: DepartmentEvent = { type: "session-failed", problem: { type: "unreachable" } };
    expect(after(signedIn(), away).session.state).toBe("signed-in");
    expect(after(away).session.state).toBe("failed");
  });

  it("asks again what was changed and shows the old until the new is there", () => {
    const filtered: DepartmentEvent = { type: "answered", address: "/api/cases?state=open", value: [] };
    const other: DepartmentEvent = { type: "answered", address: "/api/casebook", value: [] };
    const changed = after(signedIn(), filtered, other, { type: "changed", paths: ["cases"] });
    expect(changed.answers["/api/cases?state=open"]).toMatchObject({ state: "ready", isStale: true });
    expect(changed.answers["/api/casebook"]).toMatchObject({ isStale: false });
  });

  it("drops what failed once the session is back, so that it is asked again", () => {
    const failed: DepartmentEvent = {
      type: "failed",
      address: "/api/audit",
      problem: { type: "refused", status: 401, problem: "signed-out" },
    };
    const ended = after(signedIn(), failed);
    expect(ended.session).toMatchObject({ isOver: true });
    expect(update(ended, signedIn()).answers).toEqual({});
  });
});

describe("screensFor()", () => {
  it("offers each role its own screens, and an account to everybody", () => {
    expect(screensFor(["researcher"])).toEqual(["accuracy", "export", "account"]);
    expect(screensFor(["clinician"])).not.toContain("audit");
    expect(screensFor(["administrator"])).not.toContain("cases");
  });

  it("finds its way by the address and back", () => {
    expect(routeOf(hashOf("formulary", "edit", "draft"))).toEqual({
      screen: "formulary",
      path: ["edit", "draft"],
    });
    expect(routeOf("#/nowhere")).toEqual({ screen: undefined, path: [] });
  });
});
