import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const repositoryRoot: string = fileURLToPath(new URL("..", import.meta.url));

export interface Workspace {
  /** Relative to the repository root: `packages/core`. */
  readonly folder: string;
  readonly manifest: {
    readonly name: string;
    readonly version: string;
    readonly exports?: Readonly<Record<string, string>>;
  };
}

/** The workspaces that the root package.json names, in order of folder. */
export function readWorkspaces(): readonly Workspace[] {
  const { workspaces } = readJson("package.json") as { workspaces: string[] };
  const folders = workspaces.flatMap((pattern) =>
    globSync(`${pattern}/package.json`, { cwd: repositoryRoot }).map((file) =>
      file.replace(/\/package\.json$/, ""),
    ),
  );
  if (folders.length === 0)
    throw new RangeError(`Cannot read workspaces as none match ${workspaces.join(", ")}`);
  return folders
    .sort()
    .map((folder) => ({ folder, manifest: readJson(`${folder}/package.json`) as Workspace["manifest"] }));
}

export function readJson(file: string): unknown {
  return JSON.parse(readFileSync(join(repositoryRoot, file), "utf8"));
}
