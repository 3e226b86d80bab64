import { readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { gunzipSync } from "node:zlib";
import { runFit } from "./run-fit.ts";

const usage = `Fits the body model to NHANES and logs its accuracy.

  npm run fit -- --nhanes DIR [--surveys FILE]

  --nhanes DIR    folder with BMX_*.XPT and DEMO_*.XPT from the CDC and/or nhanes_children.csv
                  (gzipped or not; sub-folders too)
  --surveys FILE  surveys_children.csv: its low-birth-weight infants join the fit, and the model is judged on each open survey

Writes packages/core/src/body/reference/by-length.json and by-age.json, reference/fit-log.md and reference/surveys-log.md: the same
bytes for the same data. The model that ships was fitted with --surveys.
`;

function main(): void {
  const { nhanes, surveys, help } = readOptions();
  if (help) {
    process.stdout.write(usage);
    return;
  }
  if (nhanes === undefined) throw new WrongUsage("--nhanes is missing");
  const fitted = runFit({
    nhanesFolder: nhanes,
    ...(surveys === undefined ? {} : { surveyCsv: contents(surveys) }),
    tell: (line) => process.stderr.write(`${line}\n`),
  });
  write("../../../packages/core/src/body/reference/by-length.json", fitted.byLengthJson);
  write("../../../packages/core/src/body/reference/by-age.json", fitted.byAgeJson);
  write("../../fit-log.md", fitted.fitLog);
  if (fitted.surveyLog !== undefined) write("../../surveys-log.md", fitted.surveyLog);
}

class WrongUsage extends Error {}

function readOptions(): { readonly nhanes?: string; readonly surveys?: string; readonly help?: boolean } {
  try {
    const options = {
      nhanes: { type: "string" },
      surveys: { type: "string" },
      help: { type: "boolean" },
    } as const;
    return parseArgs({ options }).values;
  } catch (error) {
    throw new WrongUsage(error instanceof Error ? error.message : String(error));
  }
}

function write(path: string, text: string): void {
  writeFileSync(new URL(path, import.meta.url), text);
}

function contents(path: string): string {
  const bytes = readFileSync(path);
  return new TextDecoder().decode(path.endsWith(".gz") ? gunzipSync(bytes) : bytes);
}

try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  if (error instanceof WrongUsage) process.stderr.write(`\n${usage}`);
  process.exitCode = error instanceof WrongUsage ? 2 : 1;
}
