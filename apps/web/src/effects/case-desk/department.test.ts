import { syncProtocol } from "@steelyard/records/sync";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { CaseDesk } from "../../state/case-desk.ts";
import { openDepartment } from "./department.ts";

vi.mock("./department-documents.ts", () => ({
  departmentDocuments: () => ({
    state: () => ({ holds: {}, refusedDocuments: [] }),
    look: async () => undefined,
    end: async () => undefined,
  }),
}));
vi.mock("./acknowledged.ts", () => ({
  acknowledgedOn: async (_link: string, epoch: string) => new Map([["known", epoch]]),
  rememberAcknowledged: async () => undefined,
  forgetAcknowledged: async () => undefined,
}));

const key = "steelyard.department";
const desk = {
  state: () => ({ events: [] }),
  subscribe: () => () => undefined,
  take: vi.fn(async () => undefined),
} as unknown as CaseDesk;
const epoch = "0b9fd2f1-3a53-4f0e-9d58-0b1b1c7f5a11";

let kept: Map<string, string>;
let answers: ((reply: Response) => void)[];
let listeners: Map<string, (event: object) => void>;
const link = (): Readonly<Record<string, unknown>> | undefined =>
  JSON.parse(kept.get(key) ?? "null") ?? undefined;
const asked = (count: number) => vi.waitFor(() => expect(answers.length).toBe(count));
/** A pull is answered; every task that follows from it without another answer is done on return. */
const answer = async (at: number): Promise<void> => {
  answers[at]?.(
    Response.json({
      protocol: syncProtocol,
      epoch,
      serverAt: "2026-11-25T10:00:00.000Z",
      changes: [],
      cursor: 7,
      more: false,
    }),
  );
  for (let task = 0; task < 20; task += 1) await new Promise((done) => setTimeout(done));
};

beforeEach(() => {
  kept = new Map();
  answers = [];
  listeners = new Map();
  vi.stubGlobal("localStorage", {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => kept.set(name, text),
    removeItem: (name: string) => kept.delete(name),
  });
  vi.stubGlobal("addEventListener", (name: string, tell: (event: object) => void) =>
    listeners.set(name, tell),
  );
  vi.stubGlobal(
    "fetch",
    vi.fn(() => new Promise<Response>((done) => answers.push(done))),
  );
});
afterEach(() => {
  vi.unstubAllGlobals();
});

test("what has been pulled is kept with the link", async () => {
  const department = openDepartment(desk);
  department.link("first");
  await asked(1);
  await answer(0);
  expect(link()).toMatchObject({ token: "first", epoch, cursor: 7 });
  await department.unlink(false);
  expect([link(), department.state().link]).toEqual([undefined, "off"]);
});

test("an answer to the link of before says nothing of the next one", async () => {
  const department = openDepartment(desk);
  department.link("first");
  await asked(1);
  await department.unlink(false);
  department.link("second");
  await answer(0);
  expect(link()).toMatchObject({ token: "second" });
  expect(link()).not.toHaveProperty("cursor");
  expect(department.state().reachedAt).toBeUndefined();
  await asked(2);
  await answer(1);
  expect(link()).toMatchObject({ token: "second", epoch, cursor: 7 });
  await department.unlink(false);
});

test("a link that another tab has ended is not brought back by an answer on its way", async () => {
  const department = openDepartment(desk);
  department.link("first");
  await asked(1);
  kept.delete(key);
  listeners.get("storage")?.({ key });
  await answer(0);
  expect([link(), department.state().link]).toEqual([undefined, "off"]);
});

test("what the server has acknowledged is not sent again where the disk is read late", async () => {
  kept.set(key, JSON.stringify({ token: "first", link: "l", epoch, cursor: 7 }));
  let now: object = { keeps: "opening", events: [] };
  let tell: () => void = () => undefined;
  const late = {
    ...desk,
    state: () => now,
    subscribe: (own: () => void) => {
      tell = own;
      return () => undefined;
    },
  } as unknown as CaseDesk;
  const department = openDepartment(late);
  for (let task = 0; task < 20; task += 1) await new Promise((done) => setTimeout(done));
  now = { keeps: "device", events: [{ id: "known" }] };
  tell();
  await asked(1);
  expect(vi.mocked(fetch).mock.calls.map(([address]) => address)).toEqual([
    expect.stringContaining("/api/sync/pull"),
  ]);
  expect(department.state().waiting).toBe(0);
});
