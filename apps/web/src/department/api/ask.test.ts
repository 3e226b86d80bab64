import { object, string } from "valibot";
import { expect, it } from "vitest";
import { isSessionOver } from "./api-problem.ts";
import { addressOf, ask } from "./ask.ts";

const schema = object({ name: string() });

/** A server that answers once, and what it was asked. */
function server(status: number, body: string): { fetch: typeof fetch; asked: () => RequestInit } {
  let asked: RequestInit = {};
  return {
    fetch: (async (_address: string, init: RequestInit) => {
      asked = init;
      return new Response(body, { status });
    }) as typeof fetch,
    asked: () => asked,
  };
}

it("names a question by its address, without what is not filled in", () => {
  expect(addressOf({ path: "cases", query: { from: "", to: undefined, code: "K 4&7" } })).toBe(
    "/api/cases?code=K+4%267",
  );
});

it("sends the proof of the session with what changes something, and with nothing else", async () => {
  const { fetch, asked } = server(200, '{"name":"a"}');
  expect(await ask({ path: "people", body: {}, schema }, { csrf: "proof", fetch })).toEqual({
    ok: true,
    value: { name: "a" },
  });
  expect(asked().headers).toMatchObject({ "x-steelyard-csrf": "proof" });
  await ask({ path: "people", schema }, { csrf: "proof", fetch });
  expect(asked().headers).not.toHaveProperty("x-steelyard-csrf");
  expect(asked().method).toBe("GET");
});

it.each([
  [200, '{"name":1}', { type: "update-needed" }],
  [404, "<!doctype html>", { type: "no-records" }],
  [404, '{"problem":"not-found"}', { type: "no-records" }],
  [404, '{"problem":"unknown-case"}', { type: "refused", status: 404, problem: "unknown-case" }],
  [502, "<html>", { type: "unreachable" }],
  [
    422,
    '{"problem":"faulty-document","reason":"two","faults":[{"place":"a","message":"b"},{"place":1}]}',
    {
      type: "refused",
      status: 422,
      problem: "faulty-document",
      reason: "two",
      faults: [{ place: "a", message: "b" }],
    },
  ],
])("tells apart what a server says: %i %s", async (status, body, problem) => {
  expect(await ask({ path: "x", schema }, server(status, body))).toEqual({ ok: false, error: problem });
});

it("says that nobody answers where nobody does", async () => {
  const fetch = (() => Promise.reject(new TypeError("offline"))) as unknown as typeof globalThis.fetch;
  expect(await ask({ path: "x", schema }, { fetch })).toEqual({ ok: false, error: { type: "unreachable" } });
});

it("takes a wrong password for no end of the session", () => {
  const refused = (problem: string) => ({ type: "refused", status: 401, problem }) as const;
  expect(isSessionOver(refused("wrong-credentials"))).toBe(false);
  expect(isSessionOver(refused("signed-out"))).toBe(true);
  expect(isSessionOver({ type: "unreachable" })).toBe(false);
});
