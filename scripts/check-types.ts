// `npm run typecheck`: the root and every workspace, each under its own tsconfig, so that a browser or Node
// name in a pure package is a type error. As many at a time as there are processors.
import { spawn } from "node:child_process";
import { availableParallelism } from "node:os";
import { readWorkspaces } from "./read-workspaces.ts";

const projects = [".", ...readWorkspaces().map(({ folder }) => folder)];
const waiting = [...projects];
const failed: string[] = [];

async function checkNext(): Promise<void> {
  const project = waiting.shift();
  if (project === undefined) return;
  const { ok, output } = await check(project);
  console.log(`tsc -p ${project}${output === "" ? "" : `\n${output}`}`);
  if (!ok) failed.push(project);
  return checkNext();
}

function check(project: string): Promise<{ readonly ok: boolean; readonly output: string }> {
  return new Promise((resolve, reject) => {
    const compiler = spawn("tsc", ["-p", project], { stdio: ["ignore", "pipe", "inherit"] });
    let output = "";
    compiler.stdout.setEncoding("utf8").on("data", (text: string) => {
      output += text;
    });
    compiler.on("error", reject);
    compiler.on("close", (code) => resolve({ ok: code === 0, output }));
  });
}

await Promise.all(Array.from({ length: availableParallelism() }, checkNext));
console.log(`Types: ${projects.length} projects, ${failed.length} with errors.`);
process.exitCode = failed.length === 0 ? 0 : 1;
