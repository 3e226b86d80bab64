import { execFile } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));

interface Plant {
  readonly rule: string;
  readonly file: string;
  readonly text: string;
  /** Files the planted one needs beside it. */
  readonly beside?: Readonly<Record<string, string>>;
}

// One violation of every rule that biome.json adds to the recommended ones.
const plants: readonly Plant[] = [
  {
    rule: "noPrivateImports",
    file: "packages/core/src/uses-private.ts",
    text: 'import { hidden } from "./hidden.ts";\nexport const seen = hidden;\n',
    beside: { "packages/core/src/hidden.ts": "/** @private */\nexport const hidden = 1;\n" },
  },
  {
    rule: "noUndeclaredDependencies",
    file: "packages/core/src/undeclared.ts",
    text: 'export { nothing } from "not-in-package-json";\n',
  },
  {
    rule: "noUnusedImports",
    file: "packages/core/src/unused-import.ts",
    text: 'import { spare } from "./spare.ts";\nexport const kept = 1;\n',
    beside: { "packages/core/src/spare.ts": "export const spare = 1;\n" },
  },
  {
    rule: "noUnusedVariables",
    file: "packages/core/src/unused-variable.ts",
    text: "const spare = 1;\nexport const kept = 2;\n",
  },
  {
    rule: "useImportExtensions",
    file: "packages/core/src/no-extension.ts",
    text: 'export { spare } from "./spare";\n',
  },
  {
    rule: "noFloatingPromises",
    file: "apps/server/src/floating.ts",
    text: "async function wait(): Promise<number> {\n  return 1;\n}\n\nexport function go(): void {\n  wait();\n}\n",
  },
  {
    rule: "noMisusedPromises",
    file: "apps/server/src/misused.ts",
    text: 'async function ready(): Promise<boolean> {\n  return true;\n}\n\nexport const state = ready() ? "yes" : "no";\n',
  },
  {
    rule: "useExhaustiveSwitchCases",
    file: "packages/core/src/switch.ts",
    text: 'type Sex = "f" | "m";\nexport function word(sex: Sex): string {\n  let text = "";\n  switch (sex) {\n    case "f":\n      text = "girl";\n  }\n  return text;\n}\n',
  },
  { rule: "noDefaultExport", file: "packages/core/src/default.ts", text: "export default 1;\n" },
  { rule: "noEnum", file: "packages/core/src/enum.ts", text: "export enum Sex {\n  Girl = 0,\n}\n" },
  {
    rule: "noParameterProperties",
    file: "packages/core/src/property.ts",
    text: "export class Child {\n  constructor(readonly age: number) {}\n}\n",
  },
  {
    rule: "useFilenamingConvention",
    file: "packages/core/src/camelCase.ts",
    text: "export const value = 1;\n",
  },
  {
    rule: "useNodejsImportProtocol",
    file: "apps/server/src/bare-node.ts",
    text: 'export { join } from "path";\n',
  },
  {
    rule: "noConsole",
    file: "packages/core/src/prints.ts",
    text: 'export function say(): void {\n  console.log("said");\n}\n',
  },
  {
    rule: "noImportCycles",
    file: "packages/core/src/egg.ts",
    text: 'import type { Hen } from "./hen.ts";\nexport interface Egg {\n  readonly from: Hen;\n}\n',
    beside: {
      "packages/core/src/hen.ts":
        'import type { Egg } from "./egg.ts";\nexport interface Hen {\n  readonly egg?: Egg;\n}\n',
    },
  },
  ...[
    "Math.random()",
    "Date.now()",
    "performance.now()",
    "new Date()",
    "new Date",
    "crypto.randomUUID()",
  ].map((call, index) => ({
    rule: "takes",
    file: `packages/formulary/src/impure-${index}.ts`,
    text: `export const value = ${call};\n`,
  })),
  ...[
    "(1.5).toFixed(1)",
    "(1.5).toFixed()",
    "(1.5).toPrecision(2)",
    "(1.5).toExponential(2)",
    '(1.5).toLocaleString("en", {})',
    "(1.5).toLocaleString()",
    'new Intl.NumberFormat("en").format(1.5)',
  ].flatMap((call, index) =>
    ["packages/core/src/dosing", "apps/web/src"].map((folder) => ({
      rule: "Numbers are written by @steelyard/core/units only",
      file: `${folder}/loose-${index}.ts`,
      text: `export const text = ${call};\n`,
    })),
  ),
];

// The same things where they are allowed, so that a rule that fires everywhere is caught as well.
const allowed: Readonly<Record<string, string>> = {
  "packages/core/src/units/write.ts": "export const text = (1.5).toFixed(1);\n",
  "packages/core/src/random.test.ts": "export const value = Math.random() + Date.now();\n",
  "packages/core/src/dated.ts": "export const day = new Date(0);\n",
  "apps/server/src/prints.ts": 'console.log("said");\n',
  "apps/server/vite.config.ts": "export default {};\n",
};

interface BiomeReport {
  readonly diagnostics: readonly {
    readonly category: string;
    readonly message: string;
    readonly severity: string;
    readonly location: { readonly path: string };
  }[];
}

let tree = "";
let report: BiomeReport = { diagnostics: [] };

async function plant(file: string, text: string): Promise<void> {
  await mkdir(dirname(join(tree, file)), { recursive: true });
  await writeFile(join(tree, file), text);
}

function errorsIn(file: string): string[] {
  return report.diagnostics
    .filter(({ location, severity }) => location.path.endsWith(file) && severity === "error")
    .map(({ category, message }) => `${category} ${message}`);
}

beforeAll(async () => {
  tree = await mkdtemp(join(tmpdir(), "steelyard-lint-"));
  const config = JSON.parse(await readFile(join(root, "biome.json"), "utf8"));
  // The temporary tree has no git; formatting of the planted texts is beside the point.
  await plant("biome.json", JSON.stringify({ ...config, vcs: { enabled: false } }));
  await cp(join(root, "scripts/lint"), join(tree, "scripts/lint"), { recursive: true });
  for (const folder of ["packages/core", "packages/formulary", "apps/web", "apps/server"]) {
    await plant(`${folder}/package.json`, `{ "name": "${folder}", "type": "module" }`);
  }
  for (const { file, text, beside } of plants) {
    await plant(file, text);
    for (const [name, body] of Object.entries(beside ?? {})) await plant(name, body);
  }
  for (const [file, text] of Object.entries(allowed)) await plant(file, text);
  const biome = join(root, "node_modules/@biomejs/biome/bin/biome");
  const lint = ["lint", "--reporter=json", "--max-diagnostics=none", "."];
  const output = await promisify(execFile)(process.execPath, [biome, ...lint], { cwd: tree }).then(
    ({ stdout }) => stdout,
    (failed: { stdout: string }) => failed.stdout,
  );
  report = JSON.parse(output.slice(output.indexOf("{")));
}, 60_000);

afterAll(() => rm(tree, { recursive: true, force: true }));

describe("the lint rules of biome.json", () => {
  it.each(plants)("catch $rule in $file", ({ rule, file }) => {
    expect(errorsIn(file).join("\n")).toContain(rule);
  });

  it.each(Object.keys(allowed))("leave %s alone", (file) => {
    expect(errorsIn(file)).toEqual([]);
  });

  it("are all planted here", async () => {
    const config = JSON.parse(await readFile(join(root, "biome.json"), "utf8"));
    const { preset: _, ...groups } = config.linter.rules;
    const named = Object.values(groups).flatMap((group) => Object.keys(group as object));
    expect(named.filter((rule) => !plants.some((planted) => planted.rule === rule))).toEqual([]);
  });
});
