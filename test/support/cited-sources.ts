import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";

export interface CitedSource {
  readonly id: string;
  /** Relative to the folder searched. */
  readonly file: string;
}

const inCode = /@source\s+([\w-]+)|\bsourceId:\s*"([^"]*)"/g;
const jsonKeys = new Set(["source", "sourceId", "sources"]);

function* citedInJson(value: unknown, cites = false): Generator<string> {
  if (typeof value === "string") {
    if (cites) yield value;
  } else if (Array.isArray(value)) {
    for (const item of value) yield* citedInJson(item, cites);
  } else if (typeof value === "object" && value !== null) {
    for (const [key, item] of Object.entries(value)) yield* citedInJson(item, jsonKeys.has(key));
  }
}

/**
 * Every id of a source that code or data under `folder` cites: `@source id` and `sourceId: "id"` in
 * TypeScript; values of `source`, `sourceId` and `sources` in the data of packages and of the fit.
 */
export function readCitedSources(folder: string): readonly CitedSource[] {
  const find = (patterns: string[]) =>
    globSync(patterns, { cwd: folder, exclude: (name) => name === "node_modules" || name === "dist" }).sort();
  const read = (file: string) => readFileSync(join(folder, file), "utf8");
  const code = find(["{packages,apps}/**/*.{ts,tsx}", "{reference,bench}/**/*.ts"]).flatMap((file) =>
    [...read(file).matchAll(inCode)].map((match) => ({ id: match[1] ?? match[2] ?? "", file })),
  );
  const data = find(["packages/*/{src,data,test}/**/*.json", "reference/**/*.json"]).flatMap((file) =>
    [...citedInJson(JSON.parse(read(file)))].map((id) => ({ id, file })),
  );
  return [...code, ...data];
}
