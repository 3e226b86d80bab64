import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { repositoryRoot } from "../scripts/read-workspaces.ts";
import { type DocExample, readDocExamples } from "./support/doc-examples.ts";
import { runDocExamples } from "./support/run-doc-examples.ts";

const examples = readDocExamples(repositoryRoot);
const outcomes = runDocExamples(examples);

describe("examples in doc comments, the README and docs", () => {
  it.each(examples.map((example, index) => ({ ...example, index })))(
    "$file:$line runs and asserts",
    ({ code, index }) => {
      expect(outcomes[index]).toBe("");
      expect(code).toMatch(/\bassert(\.\w+)?\(/);
    },
  );

  it("are found in core and in the README", () => {
    const files = examples.map(({ file }) => file);
    expect(files).toContain("README.md");
    expect(files.filter((file) => file.startsWith("packages/core/src/"))).not.toEqual([]);
  });
});

describe("the runner of examples", () => {
  const example = (code: string): DocExample => ({ file: "planted.ts", line: 1, code });

  it("sees a false assertion, a missing export and a syntax error, and no fault in a sound one", () => {
    const [sound, falseClaim, missing, broken] = runDocExamples([
      example('import assert from "node:assert/strict";\nassert.equal(1 + 1, 2);\n'),
      example('import assert from "node:assert/strict";\nassert.equal(1 + 1, 3);\n'),
      example('import { noSuchThing } from "@steelyard/core/units";\nnoSuchThing();\n'),
      example("const = 1;\n"),
    ]);
    expect(sound).toBe("");
    expect(falseClaim).toContain("AssertionError");
    expect(missing).toContain("noSuchThing");
    expect(broken).not.toBe("");
  });

  it("takes the code out of doc comments and Markdown, with its line", async () => {
    const folder = await mkdtemp(join(tmpdir(), "steelyard-examples-"));
    await mkdir(join(folder, "packages/core/src"), { recursive: true });
    await writeFile(
      join(folder, "packages/core/src/half.ts"),
      "/**\n * Half.\n *\n * ```ts\n * half(2);\n *\n *   half(4);\n * ```\n */\nexport const half = 1;\nconst text = `\n```ts\nnot(this);\n```\n`;\n",
    );
    await writeFile(join(folder, "README.md"), "# Title\n\n```ts\nhalf(6);\n```\n\n```text\nnot code\n```\n");
    expect(readDocExamples(folder)).toEqual([
      { file: "packages/core/src/half.ts", line: 4, code: "half(2);\n\n  half(4);\n" },
      { file: "README.md", line: 3, code: "half(6);\n" },
    ]);
    await rm(folder, { recursive: true });
  });
});
