// `npm run typecheck`: the root and every workspace, each under its own tsconfig, so that a browser or Node
// name in a pure package is a type error.
import { spawnSync } from "node:child_process";
import { readWorkspaces } from "./read-workspaces.ts";

const projects = [".", ...readWorkspaces().map(({ folder }) => folder)];
const failed = projects.filter((project) => {
  console.log(`tsc -p ${project}`);
  return spawnSync("tsc", ["-p", project], { stdio: "inherit" }).status !== 0;
});
console.log(`Types: ${projects.length} projects, ${failed.length} with errors.`);
process.exitCode = failed.length === 0 ? 0 : 1;
