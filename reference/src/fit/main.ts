import { readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { gunzipSync } from "node:zlib";
import { createBodyModel } from "@steelyard/core/body";
import { loadNhanes } from "../nhanes/load-nhanes.ts";
import { readSurveys } from "../surveys/read-surveys.ts";
import { writeSurveyLog } from "../surveys/write-survey-log.ts";
import { crossValidate } from "./cross-validate.ts";
import { fitBodyModel } from "./fit-body-model.ts";
import { formatReference } from "./format-reference.ts";
import { selectChildren } from "./select-children.ts";
import { writeLog } from "./write-log.ts";

/** Version of the coefficients: raise it whenever a fit that ships changes. */
const version = "nhanes 1";

const usage = `Fits the body model to NHANES and logs its accuracy.

  npm run fit -- --nhanes DIR [--surveys FILE]

  --nhanes DIR    folder with BMX_*.XPT and DEMO_*.XPT from the CDC and/or nhanes_children.csv (gzipped or not; sub-folders too)
  --surveys FILE  surveys_children.csv, to log the model's accuracy on each open survey as well
`;

function main(): void {
  const { values } = parseArgs({
    options: { nhanes: { type: "string" }, surveys: { type: "string" }, help: { type: "boolean" } },
  });
  if (values.help || values.nhanes === undefined) {
    process.stdout.write(usage);
    process.exitCode = values.help ? 0 : 2;
    return;
  }
  const target = (path: string): URL => new URL(path, import.meta.url);
  const load = loadNhanes(values.nhanes);
  process.stderr.write(`${load.children.length} children in ${load.files.length} files\n`);
  const selection = selectChildren(load.children);
  for (const [reason, n] of selection.dropped) process.stderr.write(`  dropped ${n}: ${reason}\n`);
  process.stderr.write(`${selection.children.length} to fit\n`);
  const reference = fitBodyModel(selection.children, { version });
  writeFileSync(target("../../../packages/core/src/body/reference/nhanes.json"), formatReference(reference));
  process.stderr.write("Cross-validating in five folds\n");
  const heldOut = crossValidate(selection.children, { version });
  writeFileSync(target("../../fit-log.md"), writeLog({ load, selection, reference, heldOut }));
  if (values.surveys !== undefined) {
    const survey = readSurveys(contents(values.surveys));
    writeFileSync(
      target("../../surveys-log.md"),
      writeSurveyLog({ survey, model: createBodyModel(reference) }),
    );
  }
}

function contents(path: string): string {
  const bytes = readFileSync(path);
  return new TextDecoder().decode(path.endsWith(".gz") ? gunzipSync(bytes) : bytes);
}

try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
