import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { mutants } from "./mutants.ts";
import { plant } from "./plant.ts";

const read = (path: string): string => readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8");

// Whether they are caught is seen by `npm run mutations -w packages/formulary`, which takes longer.
describe("the planted faults", () => {
  it.each(mutants)("$name can be planted, and its tests are there", (mutant) => {
    const text = read(mutant.file);
    expect(plant(mutant, text)).not.toBe(text);
    for (const test of mutant.tests) expect(read(test)).not.toBe("");
  });

  it("are at least 40, each once", () => {
    expect(mutants.length).toBeGreaterThanOrEqual(40);
    expect(new Set(mutants.map(({ name }) => name)).size).toBe(mutants.length);
  });

  it("are all listed in docs/dosing.md", () => {
    const page = read("docs/dosing.md").replaceAll(/\s+/g, " ");
    expect(mutants.map(({ name }) => name).filter((name) => !page.includes(name))).toEqual([]);
  });
});
