import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import {
  chartBytes,
  firstScreenBudget,
  firstScreenBytes,
  type Output,
  shellBytes,
} from "../build/first-screen-budget.ts";

const paper = Array.from({ length: 40 }, (_, i) => `export const d${i} = ${i * i};`).join("");
const bundle: Readonly<Record<string, Output>> = {
  "index.js": { type: "chunk", isEntry: true, imports: ["shared.js"], code: "export const a = 1;" },
  "shared.js": { type: "chunk", isEntry: false, imports: ["index.js"], code: "export const b = 2;" },
  "later.js": { type: "chunk", isEntry: false, imports: [], code: "export const c = 3;".repeat(99) },
  "index.css": { type: "asset", source: "body { margin: 0 }" },
  "face.woff2": { type: "asset", source: "typeface" },
  "face.woff": { type: "asset", source: "typeface for paper" },
  "assets/paper-a1.js": { type: "chunk", isEntry: false, imports: [], code: paper },
};
const zipped = (code: string): number => gzipSync(code, { level: 9 }).length;

test("counts the entry and what it imports at once, each once, and nothing that comes later", () => {
  expect(firstScreenBytes(bundle)).toBe(zipped("export const a = 1;") + zipped("export const b = 2;"));
});

test("the whole page is everything but the typefaces and the papers", () => {
  const { "face.woff2": _, "face.woff": __, "assets/paper-a1.js": ___, ...rest } = bundle;
  expect(shellBytes(bundle)).toBe(
    Object.values(rest).reduce((sum, { code, source }) => sum + zipped(String(code ?? source)), 0),
  );
});

test("papers and studies are counted by themselves", () => {
  expect(chartBytes(bundle)).toBe(zipped(paper));
});

test.each([
  [
    { limitKb: 0.01, shellLimitKb: 400, chartLimitKb: 650 },
    /first-screen script [\d.]+ kB gzip is over its budget of 0.01 kB/,
  ],
  [
    { limitKb: 60, shellLimitKb: 400, chartLimitKb: 0.01 },
    /paper and study [\d.]+ kB gzip is over its budget of 0.01 kB/,
  ],
  [
    { limitKb: 60, shellLimitKb: 0.1, chartLimitKb: 650 },
    /whole page without typefaces, paper and study [\d.]+ kB gzip is over its budget of 0.1 kB/,
  ],
])("over budget with %j the build fails", (limits, complaint) => {
  const { generateBundle } = firstScreenBudget(limits);
  if (typeof generateBundle !== "object") throw new Error("the plugin has no hook");
  const context = {
    error: (message: string): never => {
      throw new Error(message);
    },
  };
  const run = (): unknown => Reflect.apply(generateBundle.handler, context, [{}, bundle, true]);
  expect(run).toThrow(complaint);
});
