import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { type Chunk, firstScreenBudget, firstScreenBytes } from "../build/first-screen-budget.ts";

const bundle: Readonly<Record<string, Chunk>> = {
  "index.js": { type: "chunk", isEntry: true, imports: ["shared.js"], code: "export const a = 1;" },
  "shared.js": { type: "chunk", isEntry: false, imports: ["index.js"], code: "export const b = 2;" },
  "later.js": { type: "chunk", isEntry: false, imports: [], code: "export const c = 3;".repeat(99) },
  "index.css": { type: "asset" },
};
const zipped = (code: string): number => gzipSync(code, { level: 9 }).length;

test("counts the entry and what it imports at once, each once, and nothing that comes later", () => {
  expect(firstScreenBytes(bundle)).toBe(zipped("export const a = 1;") + zipped("export const b = 2;"));
});

test("a script over the budget fails the build", () => {
  const { generateBundle } = firstScreenBudget({ limitKb: 0.01 });
  if (typeof generateBundle !== "object") throw new Error("the plugin has no hook");
  const context = {
    error: (message: string): never => {
      throw new Error(message);
    },
  };
  const run = (): unknown => Reflect.apply(generateBundle.handler, context, [{}, bundle, true]);
  expect(run).toThrow(/first-screen script [\d.]+ kB gzip is over its budget of 0.01 kB/);
});
