import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { repositoryRoot } from "../../scripts/read-workspaces.ts";
import type { DocExample } from "./doc-examples.ts";

// Each example is a module of its own; the first line that throws is its failure.
const driver = `
const [count, folder] = [Number(process.argv[2]), process.argv[3]];
const outcomes = [];
for (let index = 0; index < count; index++) {
  try {
    await import(folder + "/example-" + index + ".ts");
    outcomes.push("");
  } catch (thrown) {
    outcomes.push(String(thrown?.stack ?? thrown) || "threw an empty value");
  }
}
process.stdout.write("\\nOUTCOMES " + JSON.stringify(outcomes));
`;

/**
 * Runs examples under the Node of this repository, as a reader would after `npm ci`: package names resolve
 * through the workspaces. Gives one text per example, empty where it ran to its end.
 */
export function runDocExamples(examples: readonly DocExample[]): readonly string[] {
  // In the tree, so that package names resolve; not under node_modules, where Node strips no types.
  const folder = mkdtempSync(join(repositoryRoot, ".doc-examples-"));
  try {
    for (const [index, { code }] of examples.entries())
      writeFileSync(join(folder, `example-${index}.ts`), code);
    writeFileSync(join(folder, "driver.mjs"), driver);
    const { stdout, stderr } = spawnSync(
      process.execPath,
      ["--no-warnings", join(folder, "driver.mjs"), String(examples.length), folder],
      { encoding: "utf8", cwd: repositoryRoot, maxBuffer: 2 ** 26 },
    );
    const outcomes = stdout.split("\nOUTCOMES ").at(-1) ?? "";
    if (!stdout.includes("\nOUTCOMES "))
      throw new Error(`Cannot run the examples as the runner ended early: ${stderr}`);
    return JSON.parse(outcomes);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
