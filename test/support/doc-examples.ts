import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";

export interface DocExample {
  /** Relative to the folder searched. */
  readonly file: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
  readonly code: string;
}

const fencedTs = /^```ts[^\S\n]*\n([\s\S]*?)^```[^\S\n]*$/gm;
const docComment = /\/\*\*[\s\S]*?\*\//g;

/** Blanks all but doc comments and takes their margin of ` * ` away, keeping every line on its line. */
function docCommentsOnly(source: string): string {
  let kept = "";
  let end = 0;
  for (const match of source.matchAll(docComment)) {
    kept += source.slice(end, match.index).replace(/[^\n]/g, "");
    kept += match[0].replace(/^[^\S\n]*\*[^\S\n]?(?!\/)/gm, "");
    end = match.index + match[0].length;
  }
  return kept;
}

function examplesIn(file: string, text: string): DocExample[] {
  return [...text.matchAll(fencedTs)].map((match) => ({
    file,
    line: text.slice(0, match.index).split("\n").length,
    code: match[1] ?? "",
  }));
}

/** Every ```ts block under `folder`: in doc comments of packages' sources, in the README and in docs. */
export function readDocExamples(folder: string): readonly DocExample[] {
  const read = (file: string) => readFileSync(join(folder, file), "utf8");
  const sources = globSync("packages/*/src/**/*.ts", { cwd: folder }).filter(
    (file) => !/\.test\.ts$/.test(file),
  );
  const documents = globSync(["*.md", "docs/**/*.md", "packages/*/*.md", "apps/*/*.md"], { cwd: folder });
  return [
    ...sources.sort().flatMap((file) => examplesIn(file, docCommentsOnly(read(file)))),
    ...documents.sort().flatMap((file) => examplesIn(file, read(file))),
  ];
}
