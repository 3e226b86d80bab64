import { mkdir, mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { ICruiseResult } from "dependency-cruiser";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import config from "../.dependency-cruiser.ts";
import { cruiseTree } from "../scripts/cruise-tree.ts";

const root = fileURLToPath(new URL("..", import.meta.url));

interface Plant {
  readonly rule: string;
  readonly file: string;
  readonly text: string;
}

const plants: readonly Plant[] = [
  { rule: "no-cycles", file: "packages/core/src/growth/a.ts", text: 'export { b } from "./b.ts";' },
  { rule: "no-cycles", file: "packages/core/src/signs/c.ts", text: 'export type { D } from "./d.ts";' },
  {
    rule: "no-unresolved-or-deep-import",
    file: "packages/formulary/src/deep.ts",
    text: 'export { a } from "@steelyard/core/src/growth/a.ts";',
  },
  {
    rule: "no-relative-import-of-another-package",
    file: "apps/cli/src/relative.ts",
    text: 'export { units } from "../../../packages/core/src/units/index.ts";',
  },
  {
    rule: "core-has-no-third-party-code",
    file: "packages/core/src/units/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "core-has-no-third-party-code",
    file: "packages/core/src/units/third-party-type.ts",
    text: 'export type { Thing } from "third-party";',
  },
  {
    rule: "formulary-third-party-is-valibot",
    file: "packages/formulary/src/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "pure-packages-touch-no-platform",
    file: "packages/core/src/units/reads.ts",
    text: 'export { readFileSync } from "node:fs";',
  },
  {
    rule: "pure-packages-touch-no-platform",
    file: "packages/formulary/src/reads.ts",
    text: 'export { env } from "node:process";',
  },
  {
    rule: "pure-packages-touch-no-platform",
    file: "packages/study/src/reads.ts",
    text: 'export { readFileSync } from "node:fs";',
  },
  {
    rule: "study-imports-core-formulary-and-paper-only",
    file: "packages/study/src/outward.ts",
    text: 'export { records } from "@steelyard/records/case";',
  },
  {
    rule: "case-third-party-is-two",
    file: "packages/records/src/case/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "records-imports-core-only",
    file: "packages/records/src/case/formulary.ts",
    text: 'export { rule } from "@steelyard/formulary";',
  },
  {
    rule: "documents-import-core-and-formulary-only",
    file: "packages/records/src/documents/study.ts",
    text: 'export { study } from "@steelyard/study";',
  },
  {
    rule: "case-touches-no-platform",
    file: "packages/records/src/case/reads.ts",
    text: 'export { readFileSync } from "node:fs";',
  },
  {
    rule: "store-third-party-is-three",
    file: "packages/records/src/store/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "people-third-party-is-one",
    file: "packages/records/src/people/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "only-dialects-touch-a-driver",
    file: "packages/records/src/store/drives.ts",
    text: 'export { DatabaseSync } from "node:sqlite";',
  },
  {
    rule: "device-touches-no-platform",
    file: "packages/records/src/sync/device/stores.ts",
    text: 'export { openStore } from "../../store/index.ts";',
  },
  {
    rule: "paper-third-party-is-three",
    file: "packages/paper/src/third-party.ts",
    text: 'export { thing } from "third-party";',
  },
  {
    rule: "pure-packages-touch-no-platform",
    file: "packages/paper/src/reads.ts",
    text: 'export { readFileSync } from "node:fs";',
  },
  {
    rule: "paper-imports-core-and-formulary-only",
    file: "packages/paper/src/outward.ts",
    text: 'export { study } from "@steelyard/study";',
  },
  {
    rule: "core-imports-no-other-package",
    file: "packages/core/src/child/outward.ts",
    text: 'export { formulary } from "@steelyard/formulary";',
  },
  {
    rule: "formulary-imports-core-only",
    file: "packages/formulary/src/outward.ts",
    text: 'export { paper } from "@steelyard/paper";',
  },
  {
    rule: "body-never-reaches-dosing",
    file: "packages/core/src/body/dosed.ts",
    text: 'export type { Dose } from "../dosing/index.ts";',
  },
  {
    rule: "body-never-reaches-dosing",
    file: "packages/core/src/body/dosed-by-way-of.ts",
    text: 'export { passed } from "../child/passes-dosing-on.ts";',
  },
  {
    rule: "dosing-never-reaches-body",
    file: "packages/core/src/dosing/embodied.ts",
    text: 'export { body } from "../body/index.ts";',
  },
  {
    rule: "only-child-and-wording-join",
    file: "packages/core/src/equipment/joins.ts",
    text: 'export { body } from "../body/index.ts";',
  },
  {
    rule: "entry-knows-no-dosing",
    file: "packages/core/src/entry/dosed.ts",
    text: 'export { dosing } from "../dosing/index.ts";',
  },
  {
    rule: "apps-never-import-each-other",
    file: "apps/cli/src/other-app.ts",
    text: 'export { server } from "@steelyard/server";',
  },
  {
    rule: "libraries-never-import-apps",
    file: "packages/formulary/src/app.ts",
    text: 'export type { server } from "@steelyard/server";',
  },
  {
    rule: "reference-imports-core-only",
    file: "reference/src/doses.ts",
    text: 'export { formulary } from "@steelyard/formulary";',
  },
  {
    rule: "nothing-imports-reference",
    file: "apps/cli/src/fits.ts",
    text: 'export { fit } from "@steelyard/reference";',
  },
  {
    rule: "web-components-have-no-effects",
    file: "apps/web/src/components/quantity/quantity.ts",
    text: 'export { store } from "../../effects/store.ts";',
  },
];

// What the rules allow, and what the plants stand on.
const sound: Readonly<Record<string, string>> = {
  "packages/core/src/growth/b.ts": 'import { a } from "./a.ts";\nexport const b = a;',
  "packages/core/src/signs/d.ts": 'import type { C } from "./c.ts";\nexport type D = C;',
  "packages/core/src/units/index.ts": "export const units = 1;",
  "packages/core/src/body/index.ts": 'export { units as body } from "../units/index.ts";',
  "packages/core/src/dosing/index.ts":
    'export { units as dosing, type units as Dose } from "../units/index.ts";',
  "packages/core/src/child/passes-dosing-on.ts": 'export { dosing as passed } from "../dosing/index.ts";',
  "packages/core/src/child/index.ts":
    'export { body } from "../body/index.ts";\nexport { dosing } from "../dosing/index.ts";',
  "packages/core/src/wording/index.ts":
    'export { body } from "../body/index.ts";\nexport { dosing } from "../dosing/index.ts";',
  "packages/core/src/units/units.test.ts":
    'import { readFileSync } from "node:fs";\nimport { thing } from "third-party";\nexport const read = [readFileSync, thing];',
  "packages/formulary/src/index.ts":
    'export { units as formulary } from "@steelyard/core/units";\nexport { v } from "valibot";',
  "packages/paper/src/index.ts":
    'export { formulary as paper } from "@steelyard/formulary";\nexport { units } from "@steelyard/core/units";\nexport { p } from "pdfkit";',
  "packages/records/src/case/index.ts":
    'export { units as records } from "@steelyard/core/units";\nexport { v } from "valibot";',
  "packages/records/src/store/index.ts":
    'export { DatabaseSync as openStore } from "./dialect/sqlite/open.ts";\nexport { v } from "valibot";',
  "packages/records/src/store/dialect/sqlite/open.ts": 'export { DatabaseSync } from "node:sqlite";',
  "packages/study/src/index.ts": 'export { units as study } from "@steelyard/core/units";',
  "apps/server/src/index.ts": 'export { createServer as server } from "node:http";',
  "apps/cli/src/index.ts": 'export { formulary } from "@steelyard/formulary";',
  "apps/web/src/effects/store.ts": "export const store = 1;",
  "apps/web/src/state/save.ts": 'export { store } from "../effects/store.ts";',
  "reference/src/index.ts": 'export { body as fit } from "@steelyard/core/body";',
  "node_modules/third-party/index.js": "export const thing = 1;",
  "node_modules/valibot/index.js": "export const v = 1;",
  "node_modules/pdfkit/index.js": "export const p = 1;",
};

const exportMaps: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "packages/core": { "./units": "./src/units/index.ts", "./body": "./src/body/index.ts" },
  "packages/formulary": { ".": "./src/index.ts" },
  "packages/paper": { ".": "./src/index.ts" },
  "packages/study": { ".": "./src/index.ts" },
  "packages/records": { "./case": "./src/case/index.ts" },
  "apps/server": { ".": "./src/index.ts" },
  reference: { ".": "./src/index.ts" },
};

async function plantTree(files: Readonly<Record<string, string>>): Promise<string> {
  const tree = await mkdtemp(join(tmpdir(), "steelyard-boundaries-"));
  const write = async (file: string, text: string) => {
    await mkdir(dirname(join(tree, file)), { recursive: true });
    await writeFile(join(tree, file), `${text}\n`);
  };
  for (const [file, text] of Object.entries(files)) await write(file, text);
  for (const name of ["third-party", "valibot", "pdfkit"]) {
    await write(`node_modules/${name}/package.json`, `{ "name": "${name}", "main": "index.js" }`);
  }
  await mkdir(join(tree, "node_modules/@steelyard"));
  for (const [folder, exports] of Object.entries(exportMaps)) {
    const name = folder.replace(/^.*\//, "");
    await write(
      `${folder}/package.json`,
      JSON.stringify({ name: `@steelyard/${name}`, type: "module", exports }),
    );
    await symlink(join(tree, folder), join(tree, "node_modules/@steelyard", name));
  }
  return tree;
}

describe("boundary rules", () => {
  let tree = "";
  let planted: ICruiseResult;

  beforeAll(async () => {
    tree = await plantTree({
      ...sound,
      ...Object.fromEntries(plants.map(({ file, text }) => [file, text])),
    });
    planted = await cruiseTree(tree);
  }, 60_000);

  afterAll(() => rm(tree, { recursive: true, force: true }));

  it.each(plants)("$rule catches $file", ({ rule, file }) => {
    const caught = planted.summary.violations.filter(({ from }) => from === file);
    expect(caught.map((violation) => violation.rule.name)).toContain(rule);
  });

  it("leave what is allowed alone", () => {
    const partners = ["packages/core/src/growth/b.ts", "packages/core/src/signs/d.ts"];
    const clean = Object.keys(sound).filter((file) => !partners.includes(file));
    const accused = planted.summary.violations.filter(({ from }) => clean.includes(from));
    expect(accused.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([]);
  });

  it("are all planted here", () => {
    const names = (config.forbidden ?? []).map(({ name }) => name);
    expect([...new Set(plants.map(({ rule }) => rule))].sort()).toEqual([...names].sort());
  });
});

describe("cruiseTree()", () => {
  it("throws where there is no TypeScript to read", async () => {
    const tree = await plantTree({ "packages/core/src/index.js": "export {};" });
    await expect(cruiseTree(tree)).rejects.toThrow("no TypeScript file was read");
    await rm(tree, { recursive: true });
  });

  it("throws where there is nothing to read", async () => {
    const tree = await mkdtemp(join(tmpdir(), "steelyard-boundaries-"));
    await expect(cruiseTree(tree)).rejects.toThrow("do not exist");
    await rm(tree, { recursive: true });
  });

  it("reads every workspace of this tree, with type-only imports", async () => {
    const { modules } = await cruiseTree(root);
    const sources = modules.map(({ source }) => source);
    for (const folder of [
      "packages/core",
      "packages/formulary",
      "apps/cli",
      "apps/server",
      "apps/web",
      "reference",
    ]) {
      expect(sources.filter((source) => source.startsWith(`${folder}/src/`))).not.toEqual([]);
    }
    const kinds = modules.flatMap(({ dependencies }) =>
      dependencies.flatMap(({ dependencyTypes }) => dependencyTypes),
    );
    expect(kinds).toContain("type-only");
  });
});
