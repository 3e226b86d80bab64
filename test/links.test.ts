import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { repositoryRoot } from "../scripts/read-workspaces.ts";
import { readTextFiles, type TextFile } from "./support/text-files.ts";

const documents = readTextFiles(["*.md", "{docs,packages,apps,reference,bench,e2e,test}/**/*.md"]);

/** GitHub's anchor of a heading. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");
}

function anchorsIn(text: string): string[] {
  return [...text.matchAll(/^#+\s+(.*)$/gm)].map((match) => anchorOf(match[1] ?? ""));
}

/** Links of a document to files or headings of this repository that are not there. */
function deadLinks({ file, text }: TextFile): string[] {
  const prose = text.replace(/^```[\s\S]*?^```/gm, "").replace(/`[^`\n]*`/g, "");
  const targets = [...prose.matchAll(/\]\(([^)\s]+)[^)]*\)|(?:href|src)="([^"]+)"/g)].map(
    (match) => match[1] ?? match[2] ?? "",
  );
  return targets
    .filter((target) => !/^(https?|mailto):/.test(target))
    .filter((target) => {
      const [path = "", anchor] = target.split("#");
      const named = path === "" ? file : join(dirname(file), path);
      if (path !== "" && !existsSync(join(repositoryRoot, named))) return true;
      const other = path === "" ? text : documents.find((document) => document.file === named)?.text;
      return anchor !== undefined && other !== undefined && !anchorsIn(other).includes(anchor);
    })
    .map((target) => `${file} -> ${target}`);
}

describe("links in documents", () => {
  it("lead to files and headings that exist", () => {
    expect(documents.flatMap(deadLinks)).toEqual([]);
  });

  it("lead from the index to every document", () => {
    const index = documents.find(({ file }) => file === "docs/README.md")?.text ?? "";
    const others = documents.map(({ file }) => file).filter((file) => /^docs\/.*\.md$/.test(file));
    const missing = others.filter(
      (file) => file !== "docs/README.md" && !index.includes(`(${file.slice(5)})`),
    );
    expect(missing).toEqual([]);
  });

  it("are seen where they are dead, and only there", () => {
    const text =
      "# A title\n[a](README.md) [b](#a-title) ![c](docs/none.png) [d](#none) [e](https://example.org/x) `[f](none.md)`";
    expect(deadLinks({ file: "planted.md", text })).toEqual([
      "planted.md -> docs/none.png",
      "planted.md -> #none",
    ]);
  });

  it("are looked for in the documents there are", () => {
    const files = documents.map(({ file }) => file);
    for (const file of ["README.md", "ARCHITECTURE.md", "CONTRIBUTING.md"]) expect(files).toContain(file);
    expect(files.filter((file) => file.startsWith("docs/"))).not.toEqual([]);
  });
});
