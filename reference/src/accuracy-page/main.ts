import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createBodyModel } from "@steelyard/core/body";
import { fitAndHoldOut } from "../fit/fit-and-hold-out.ts";
import { runCommand } from "../run-command.ts";
import { writeAccuracy } from "./write-accuracy.ts";

const usage = `Writes the accuracy page of the body model and its figures.

  npm run accuracy -- --nhanes DIR --surveys FILE

  --nhanes DIR    folder with BMX_*.XPT and DEMO_*.XPT from the CDC and/or nhanes_children.csv
                  (gzipped or not; sub-folders too)
  --surveys FILE  surveys_children.csv

Fits and cross-validates as npm run fit does, which takes some minutes, and writes docs/accuracy.md and docs/figures/*.svg: the same
bytes for the same data.
`;

const docs = new URL("../../../docs/", import.meta.url);

runCommand({
  usage,
  surveys: "needed",
  run: (data) => {
    const fit = fitAndHoldOut({ ...data, tell: (line) => process.stderr.write(`${line}\n`) });
    const sources = JSON.parse(readFileSync(new URL("sources.json", docs), "utf8"));
    const texts = writeAccuracy({ fit, model: createBodyModel(fit.references), sources });
    mkdirSync(new URL("figures/", docs), { recursive: true });
    for (const [path, text] of texts) writeFileSync(new URL(path, docs), text);
  },
});
