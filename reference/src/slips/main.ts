import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { loadCleanRows } from "./load-clean-rows.ts";
import { writeSlipsLog } from "./write-slips-log.ts";

const usage = `Judges how slips are recognised, in real rows.

  npm run slips -w reference [-- --data DIR]

  --data DIR  folder with nhanes_children.csv.gz (or what the fit reads) and surveys_children.csv.gz;
              the folder of STEELYARD_DATA when absent

Writes reference/slips-log.md: the same bytes for the same data.
`;

function main(): void {
  const { values } = parseArgs({ options: { data: { type: "string" }, help: { type: "boolean" } } });
  const folder = values.data ?? process.env.STEELYARD_DATA;
  if (values.help || folder === undefined) {
    process.stdout.write(usage);
    process.exitCode = values.help ? 0 : 2;
    return;
  }
  writeFileSync(new URL("../../slips-log.md", import.meta.url), writeSlipsLog(loadCleanRows(folder)));
}

try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
