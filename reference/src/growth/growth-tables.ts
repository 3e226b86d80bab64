import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { makeGrowthTables } from "./make-growth-tables.ts";
import { readLmsFile } from "./read-lms-file.ts";

const usage = `Writes the growth tables of packages/core from published L, M, S figures.

  npm run growth-tables -- --lms FILE [--out FOLDER]

  --lms FILE    CSV with columns source, indicator, sex, x, L, M, S
  --out FOLDER  where to write (default packages/core/src/growth/reference)`;

const defaultFolder = fileURLToPath(new URL("../../../packages/core/src/growth/reference", import.meta.url));

async function main(): Promise<number> {
  const { values } = parseArgs({
    options: { lms: { type: "string" }, out: { type: "string" }, help: { type: "boolean" } },
  });
  if (values.help || !values.lms) {
    console.log(usage);
    return values.help ? 0 : 2;
  }
  // npm runs a script in its workspace; paths are meant from where the person stands.
  const here = process.env.INIT_CWD ?? ".";
  const folder = values.out ? resolve(here, values.out) : defaultFolder;
  const tables = makeGrowthTables(readLmsFile(await readFile(resolve(here, values.lms), "utf8")));
  await mkdir(folder, { recursive: true });
  for (const [name, text] of tables) await writeFile(join(folder, name), text);
  console.log(`${tables.size} tables written`);
  return 0;
}

try {
  process.exitCode = await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  // 2: wrong usage; 1: a file that cannot be read or served.
  process.exitCode = error instanceof TypeError && "code" in error ? 2 : 1;
}
