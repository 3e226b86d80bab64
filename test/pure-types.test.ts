import { dirname, join } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { repositoryRoot } from "../scripts/read-workspaces.ts";

/** What `tsc -p <package>` would say of one more file in its src, held in memory. */
function typeErrors(folder: string, text: string): string[] {
  const configFile = join(repositoryRoot, folder, "tsconfig.json");
  const { config } = ts.readConfigFile(configFile, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, dirname(configFile));
  const planted = join(repositoryRoot, folder, "src/planted.ts");
  const host = ts.createCompilerHost(options);
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (file) => file === planted || fileExists(file);
  host.readFile = (file) => (file === planted ? text : readFile(file));
  host.getSourceFile = (file, ...rest) =>
    file === planted ? ts.createSourceFile(file, text, options.target ?? 99) : getSourceFile(file, ...rest);
  const program = ts.createProgram([planted], options, host);
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, " "));
}

const impure: readonly (readonly [name: string, text: string])[] = [
  ["document", "export const title: string = document.title;\n"],
  ["window", "export const width: number = window.innerWidth;\n"],
  ["fetch", 'export const answer: unknown = fetch("/");\n'],
  ["localStorage", 'export const kept: unknown = localStorage.getItem("a");\n'],
  ["process", "export const name: unknown = process.env.NAME;\n"],
  ["console", 'console.log("said");\n'],
  ["setTimeout", "setTimeout(() => {}, 1);\n"],
  ["node:fs", 'import { readFileSync } from "node:fs";\nexport const read: unknown = readFileSync;\n'],
];

describe.each(["packages/core", "packages/formulary", "packages/paper"])("%s", (folder) => {
  it.each(impure)("may not know %s", (name, text) => {
    const errors = typeErrors(folder, text);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatch(new RegExp(`Cannot find (name|module) '${name}'`));
  });

  it("may compute", () => {
    expect(typeErrors(folder, "export const logLength: number = Math.log(136);\n")).toEqual([]);
  });

  it("must write the types of what it exports", () => {
    expect(typeErrors(folder, "export const logLength = Math.log(136);\n").join()).toContain(
      "--isolatedDeclarations",
    );
  });
});
