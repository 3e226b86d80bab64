import type { DocumentsInForce } from "@steelyard/records/sync";
import { beforeEach, expect, test, vi } from "vitest";
import { departmentDocuments } from "./department-documents.ts";

const offerRules = vi.hoisted(() => vi.fn<(rules: object) => Promise<boolean>>());
vi.mock("../site-rules/site-rules.ts", () => ({ offerRules }));
vi.mock("../site-rules/rules-store.ts", () => ({
  keptRules: async () => ({ inUse: undefined, next: {} }),
}));
vi.mock("../kept-site.ts", () => ({ findSite: () => undefined }));
vi.mock("../site-rules/read-documents.ts", () => ({
  readDocuments: async ({ formulary }: DocumentsInForce) => ({
    formulary: { version: Number(formulary?.sha256) },
    refused: [],
  }),
}));

const inForce = (version: number): DocumentsInForce =>
  ({ formulary: { sha256: `${version}`, content: "" } }) as unknown as DocumentsInForce;
const open = () => departmentDocuments(() => ({ token: "t" }), vi.fn());
function later<T>() {
  let resolve: (value: T) => void = () => undefined;
  const promise = new Promise<T>((done) => {
    resolve = done;
  });
  return { promise, resolve: (value: T) => resolve(value) };
}
/** What the children were given, in order: the version of a formulary, or none. */
const given = () =>
  offerRules.mock.calls.map(
    ([rules]) => (rules as { formulary: { version: number } | null }).formulary?.version,
  );

beforeEach(() => {
  offerRules.mockReset().mockResolvedValue(true);
});

test("an answer that comes after the end of the link is nobody's", async () => {
  const documents = open();
  await documents.look(async () => inForce(1));
  const answer = later<DocumentsInForce>();
  const looking = documents.look(() => answer.promise);
  await documents.end(true);
  answer.resolve(inForce(2));
  await looking;
  expect(given()).toEqual([1, undefined]);
  expect(documents.state().holds).toEqual({});
});

test("what is handed out while the link ends is given back too", async () => {
  const documents = open();
  const kept = later<boolean>();
  offerRules.mockReturnValueOnce(kept.promise);
  const looking = documents.look(async () => inForce(1));
  await vi.waitFor(() => expect(given()).toEqual([1]));
  const ended = documents.end(true);
  kept.resolve(true);
  await Promise.all([looking, ended]);
  expect(given()).toEqual([1, undefined]);
  expect(documents.state().holds).toEqual({});
});

test("the next link is asked as if nothing had been handed out", async () => {
  const documents = open();
  await documents.look(async () => inForce(1));
  const ended = documents.end(false);
  const ask = vi.fn(async (_query: string) => undefined);
  await documents.look(ask);
  await ended;
  expect(ask.mock.calls[0]?.[0]).not.toContain("formulary");
  expect(given()).toEqual([1]);
});
