/**
 * Plants each fault in a copy of the engine and the draft and sees whether the tests it names catch it:
 * `npm run mutations -w packages/formulary`. The unchanged copy must pass all of them.
 */
import { spawnSync } from "node:child_process";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Mutant, mutants } from "./mutants.ts";
import { plant } from "./plant.ts";

/** Names given on the command line keep only the faults whose name holds one of them. */
const wanted = process.argv.slice(2);
const chosen = mutants.filter(
  ({ name }) => wanted.length === 0 || wanted.some((part) => name.includes(part)),
);
const root = fileURLToPath(new URL("../../../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "steelyard-mutants-"));
const unchanged: Pick<Mutant, "name" | "tests"> = {
  name: "no fault",
  tests: [...new Set(chosen.flatMap(({ tests }) => tests))],
};

try {
  const failedBefore = run([["m-unchanged", unchanged]]);
  const first = [...failedBefore.values()][0];
  if (first !== undefined) throw new Error(`Cannot judge the tests as one fails without any fault: ${first}`);
  const planted = chosen.map((mutant, index): [string, Mutant] => [`m-${index + 1}`, mutant]);
  const caught = run(planted);
  const missed = planted.filter(([name]) => !caught.has(name)).map(([, { name }]) => name);
  for (const [name, mutant] of planted) say(`${caught.has(name) ? "caught" : "MISSED"}  ${mutant.name}`);
  say(`${chosen.length - missed.length} of ${chosen.length} planted faults caught`);
  if (missed.length > 0) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** The copies in which at least one test failed, with the name and message of one. */
function run(
  copies: readonly (readonly [string, Pick<Mutant, "name" | "tests"> | Mutant])[],
): Map<string, string> {
  for (const [name, mutant] of copies) copy(join(folder, name), mutant);
  const report = join(folder, "report.json");
  const files = copies.flatMap(([name, { tests }]) => tests.map((test) => join(folder, name, test)));
  writeFileSync(
    join(folder, "vitest.config.mjs"),
    `export default { test: { include: ${JSON.stringify(files)}, testTimeout: 60000, hookTimeout: 60000 } };\n`,
  );
  spawnSync(
    process.execPath,
    [
      join(root, "node_modules/vitest/vitest.mjs"),
      "run",
      "--root",
      folder,
      "--reporter=json",
      `--outputFile=${report}`,
    ],
    { cwd: folder, stdio: "ignore" },
  );
  const { testResults } = JSON.parse(readFileSync(report, "utf8")) as {
    testResults: {
      name: string;
      status: string;
      assertionResults: { status: string; fullName: string; failureMessages: string[] }[];
      message: string;
    }[];
  };
  if (testResults.length !== files.length)
    throw new Error(`Cannot judge: ${testResults.length} of ${files.length} ran`);
  const failed = new Map<string, string>();
  for (const { name, status, assertionResults, message } of testResults) {
    const [own] = copies.find(([each]) => name.includes(`/${each}/`)) ?? [];
    if (own === undefined || status === "passed") continue;
    // A copy that does not load has shown nothing.
    if (assertionResults.length === 0)
      throw new Error(`Cannot judge ${own} as its tests do not load: ${message}`);
    const test = assertionResults.find((result) => result.status === "failed");
    failed.set(own, `${test?.fullName ?? name}: ${test?.failureMessages[0] ?? message}`);
  }
  return failed;
}

/** What may be changed is copied, the rest is linked, so that imports within the copy lead to the copy. */
function copy(target: string, mutant: Pick<Mutant, "name" | "tests"> | Mutant): void {
  for (const name of ["core", "formulary"]) {
    const from = join(root, "packages", name);
    const to = join(target, "packages", name);
    mkdirSync(join(to, "src"), { recursive: true });
    cpSync(join(from, "package.json"), join(to, "package.json"));
    cpSync(join(from, "test"), join(to, "test"), { recursive: true });
    for (const entry of readdirSync(join(from, "src"))) {
      const isLinked = ["body", "growth", "entry", "child", "equipment", "signs"].includes(entry);
      if (isLinked) symlinkSync(join(from, "src", entry), join(to, "src", entry));
      else cpSync(join(from, "src", entry), join(to, "src", entry), { recursive: true });
    }
  }
  const modules = join(target, "node_modules");
  mkdirSync(join(modules, "@steelyard"), { recursive: true });
  for (const entry of readdirSync(join(root, "node_modules"))) {
    if (entry !== "@steelyard" && !entry.startsWith(".")) {
      symlinkSync(join(root, "node_modules", entry), join(modules, entry));
    }
  }
  for (const name of ["core", "formulary"]) {
    symlinkSync(join(target, "packages", name), join(modules, "@steelyard", name));
  }
  if (!("edit" in mutant)) return;
  const path = join(target, mutant.file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, plant(mutant, readFileSync(path, "utf8")));
}
