import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readJson, readWorkspaces, repositoryRoot } from "../scripts/read-workspaces.ts";

interface Manifest {
  readonly version: string;
  readonly license: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const { version } = readJson("package.json") as Manifest;

describe("one version for all", () => {
  it.each(readWorkspaces().map(({ folder }) => folder))(
    "%s has it, and asks for it of its neighbours",
    (folder) => {
      const manifest = readJson(`${folder}/package.json`) as Manifest;
      expect(manifest.version).toBe(version);
      expect(manifest.license).toBe("Apache-2.0");
      const asked = Object.entries(manifest.dependencies ?? {}).filter(([name]) =>
        name.startsWith("@steelyard/"),
      );
      expect(asked.filter(([, wanted]) => wanted !== version)).toEqual([]);
    },
  );

  it("is the one to cite", () => {
    const citation = readFileSync(join(repositoryRoot, "CITATION.cff"), "utf8").split("\n");
    for (const line of [`version: ${version}`, "license: Apache-2.0", "cff-version: 1.2.0"]) {
      expect(citation).toContain(line);
    }
  });
});
