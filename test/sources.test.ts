import { globSync } from "node:fs";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readJson, repositoryRoot } from "../scripts/read-workspaces.ts";
import { readCitedSources } from "./support/cited-sources.ts";

interface Entry {
  readonly id: string;
  readonly title: string;
  readonly url?: string;
  readonly doi?: string;
  readonly verification: string;
}

const registry = readJson("docs/sources.json") as readonly Entry[];
const ids = registry.map(({ id }) => id);
const cited = readCitedSources(repositoryRoot);

describe("docs/sources.json", () => {
  it("has every source that is cited", () => {
    const unknown = cited.filter(({ id }) => !ids.includes(id)).map(({ id, file }) => `${id} in ${file}`);
    expect(unknown).toEqual([]);
  });

  it("has no source that nothing cites", () => {
    expect(ids.filter((id) => !cited.some((citation) => citation.id === id))).toEqual([]);
  });

  it("is sorted by id, without repeats", () => {
    expect(ids).toEqual([...new Set(ids)].sort());
  });

  it.each(registry)("says of $id what it is and whether it was read", (entry) => {
    expect(entry.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(entry.title.trim()).not.toBe("");
    expect(["read", "memory", "common practice"]).toContain(entry.verification);
    expect(entry.url ?? "https://").toMatch(/^https:\/\//);
    expect(entry.doi ?? "10.1/x").toMatch(/^10\.\d+\/\S+$/);
  });
});

describe("published tables", () => {
  const files = globSync("packages/*/test/published/*.json", { cwd: repositoryRoot });

  it("exist", () => {
    expect(files).not.toEqual([]);
  });

  it.each(files)("%s cites a source", (file) => {
    expect(cited.filter((citation) => citation.file === file)).not.toEqual([]);
  });
});

describe("readCitedSources()", () => {
  it("finds ids in comments, in code and in data", async () => {
    const folder = await mkdtemp(join(tmpdir(), "steelyard-sources-"));
    for (const part of ["packages/core/src", "packages/formulary/data"]) {
      await mkdir(join(folder, part), { recursive: true });
    }
    const code = '/** Half. @source first, table 2 */\nexport const cite = { sourceId: "second" };\n';
    await writeFile(join(folder, "packages/core/src/half.ts"), code);
    const data = {
      source: "third",
      rules: [{ sources: [{ sourceId: "fourth", locator: "p. 1" }, "fifth"] }],
    };
    await writeFile(join(folder, "packages/formulary/data/half.json"), JSON.stringify(data));
    const found = readCitedSources(folder).map(({ id }) => id);
    expect(found).toEqual(["first", "second", "third", "fourth", "fifth"]);
    await rm(folder, { recursive: true });
  });
});
