import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { repositoryRoot } from "../../scripts/read-workspaces.ts";

export interface TextFile {
  /** Relative to the repository root. */
  readonly file: string;
  readonly text: string;
}

const skipped = new Set(["node_modules", "dist", "coverage", ".git", "package-lock.json"]);

/** The files of this repository that match the patterns, without what is installed or built. */
export function readTextFiles(patterns: readonly string[]): readonly TextFile[] {
  return globSync([...patterns], {
    cwd: repositoryRoot,
    exclude: (name) => skipped.has(name.replace(/^.*\//, "")),
  })
    .filter((file) => !file.startsWith(".doc-examples-"))
    .sort()
    .map((file) => ({ file, text: readFileSync(join(repositoryRoot, file), "utf8") }));
}
