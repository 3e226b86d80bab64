import { describe, expect, it } from "vitest";
import { readJson } from "../scripts/read-workspaces.ts";
import { readTextFiles } from "./support/text-files.ts";

const files = readTextFiles([
  "*.md",
  "{docs,packages,apps,reference,bench,e2e,scripts}/**/*.{md,ts,tsx}",
  ".ci/run",
]);

/** Commands in documents and messages that no package.json knows. */
function unknownCommands(text: string): string[] {
  const commands = [...text.matchAll(/npm run ([a-z][\w-]*)(?: -w ([\w/]+))?/g)];
  return commands
    .filter(([, script = "", folder = "."]) => {
      const { scripts = {} } = readJson(`${folder}/package.json`) as { scripts?: Record<string, string> };
      return !(script in scripts);
    })
    .map(([command]) => command);
}

describe("commands that documents and messages name", () => {
  it("exist", () => {
    const unknown = files.flatMap(({ file, text }) =>
      unknownCommands(text).map((command) => `${file}: ${command}`),
    );
    expect(unknown).toEqual([]);
  });

  it("are seen where they do not exist", () => {
    const text = "Run `npm run ok`, `npm run no-such-thing` or npm run none -w packages/core.";
    expect(unknownCommands(text)).toEqual(["npm run no-such-thing", "npm run none -w packages/core"]);
  });

  it("include in the README the one that CI runs", () => {
    const textOf = (name: string) => files.find(({ file }) => file === name)?.text;
    expect(textOf(".ci/run")).toContain("npm ci && npm test");
    expect(textOf("README.md")).toMatch(/^npm ci && npm start$/m);
    expect(textOf("README.md")).toMatch(/^npm ci && npm test$/m);
  });
});
