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
    expect([...new Set(unknown)]).toEqual([]);
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

describe("the sources that the formulary embeds", () => {
  const embedded = readJson("packages/formulary/src/sources.json") as readonly Entry[];

  it.each(embedded)("have $id as the registry has it", (entry) => {
    expect(registry.find(({ id }) => id === entry.id)).toEqual(entry);
  });
});

describe("published tables", () => {
  const files = globSync("packages/*/test/published/*.json", { cwd: repositoryRoot });

  it("exist", () => {
    expect(files).not.toEqual([]);
  });

  it.each(files)("%s names a source and the place in it for every row", (file) => {
    // A part of a table has its place in its rows: the first column.
    const rows = readJson(file) as readonly { source?: string; at?: string; rows?: readonly unknown[] }[];
    expect(rows.length).toBeGreaterThan(0);
    const bare = rows.flatMap((row, index) => (row.source && (row.at || row.rows) ? [] : [`row ${index}`]));
    expect(bare).toEqual([]);
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
