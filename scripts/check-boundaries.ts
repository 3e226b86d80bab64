// `npm run boundaries`: who imports whom, against .dependency-cruiser.ts.
import { fileURLToPath } from "node:url";
import { cruiseTree } from "./cruise-tree.ts";

const { modules, summary } = await cruiseTree(fileURLToPath(new URL("..", import.meta.url)));
for (const { rule, from, to, cycle } of summary.violations) {
  const path = cycle === undefined ? to : cycle.map(({ name }) => name).join(" -> ");
  console.error(`${rule.name}: ${from} -> ${path}`);
}
console.log(`Boundaries: ${modules.length} files read, ${summary.violations.length} forbidden imports.`);
process.exitCode = summary.violations.length === 0 ? 0 : 1;
