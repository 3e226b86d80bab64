import { writeFileSync } from "node:fs";
import { runCommand } from "../run-command.ts";
import { runFit } from "./run-fit.ts";

const usage = `Fits the body model to NHANES and logs its accuracy.

  npm run fit -- --nhanes DIR [--surveys FILE]

  --nhanes DIR    folder with BMX_*.XPT and DEMO_*.XPT from the CDC and/or nhanes_children.csv
                  (gzipped or not; sub-folders too)
  --surveys FILE  surveys_children.csv: its low-birth-weight infants join the fit, and the model is judged on each open survey

Writes packages/core/src/body/reference/by-length.json and by-age.json, reference/fit-log.md and reference/surveys-log.md: the same
bytes for the same data. The model that ships was fitted with --surveys.
`;

runCommand({
  usage,
  surveys: "optional",
  run: (data) => {
    const fitted = runFit({ ...data, tell: (line) => process.stderr.write(`${line}\n`) });
    write("../../../packages/core/src/body/reference/by-length.json", fitted.byLengthJson);
    write("../../../packages/core/src/body/reference/by-age.json", fitted.byAgeJson);
    write("../../fit-log.md", fitted.fitLog);
    if (fitted.surveyLog !== undefined) write("../../surveys-log.md", fitted.surveyLog);
  },
});

function write(path: string, text: string): void {
  writeFileSync(new URL(path, import.meta.url), text);
}
