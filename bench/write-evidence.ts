// The body model beside plain published formulas on every open survey: tables and figures, no rows. STEELYARD_DATA names the data.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { formatNumber } from "@steelyard/core/units";
import { createTypefaces, renderSvg } from "@steelyard/paper";
import type { MethodAccuracy } from "@steelyard/study/analysis";
import { methodId } from "@steelyard/study/methods";
import { drawWithinBars, ENGLISH_REPORT } from "@steelyard/study/report";
import { repositoryRoot } from "../scripts/read-workspaces.ts";
import {
  evidenceColumns,
  evidenceLine,
  FEWEST,
  judgeSurvey,
  openSurvey,
  surveyFiles,
} from "./judge-surveys.ts";

const folder = process.env.STEELYARD_DATA;
if (folder === undefined) {
  process.stderr.write("STEELYARD_DATA is not set: it names the folder of the open data.\n");
  process.exit(1);
}

const tenth = (value: number): string => formatNumber(Math.round(10 * value) / 10);
const lines: string[] = [];
const csv = [evidenceColumns];
const bars: {
  name: string;
  within10: NonNullable<MethodAccuracy["overall"]>["within10"];
  within20: NonNullable<MethodAccuracy["overall"]>["within20"];
}[] = [];
for (const file of surveyFiles) {
  const { name, by } = file;
  const study = await openSurvey(folder, file);
  const { table, flow } = study;
  lines.push(
    `\n## ${name}\n`,
    `${formatNumber(flow.read)} rows; left out: ${flow.leftOut.map(({ fate, rows }) => `${ENGLISH_REPORT.fate(fate)} ${formatNumber(rows)}`).join(", ") || "none"}.\n`,
  );
  const groups = table.words.get(by);
  for (const group of groups?.levels ?? []) {
    const judged = judgeSurvey(study, { by, group });
    if (judged.length === 0) continue;
    lines.push(
      `\n### ${group}\n`,
      "| method | children | mean error, % | SD | within 10 % (95 % interval) | within 20 % | in 95 % range |",
      "| --- | --- | --- | --- | --- | --- | --- |",
    );
    for (const { overall, coverage, method } of judged) {
      const { within10, within20 } = overall;
      lines.push(
        `| ${ENGLISH_REPORT.methodName(method)} | ${formatNumber(overall.n)} | ${tenth(overall.meanPercent)} | ${tenth(overall.sdPercent)} | ${tenth(100 * within10.share)} (${tenth(100 * within10.low)} to ${tenth(100 * within10.high)}) | ${tenth(100 * within20.share)} | ${coverage === undefined ? "" : tenth(100 * coverage.share)} |`,
      );
      csv.push(evidenceLine(group, { overall, coverage, method }));
      if (methodId(method) === "body:length+arm") bars.push({ name: group, within10, within20 });
    }
  }
}
const font = (weight: number): Uint8Array =>
  readFileSync(
    join(
      repositoryRoot,
      `node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff`,
    ),
  );
const typefaces = createTypefaces({ regular: [font(400)], bold: [font(700)] });
const out = join(repositoryRoot, "docs/evidence");
mkdirSync(out, { recursive: true });
writeFileSync(
  join(out, "length-and-arm.svg"),
  renderSvg(drawWithinBars({ lines: bars, typefaces, words: ENGLISH_REPORT }), {
    title: "Body model on length and arm: estimates within 10 % and 20 % of the scale weight, by survey",
  }),
);
writeFileSync(join(out, "accuracy.csv"), `${csv.join("\n")}\n`);
writeFileSync(
  join(out, "README.md"),
  `# The body model on the open surveys

Written by \`npm run evidence\` from the open data (\`STEELYARD_DATA\`), by the functions that \`steelyard study\` calls; numbers in full:
[accuracy.csv](accuracy.csv). Errors are estimate minus true weight, % of the true weight. Surveys are taken as they were published, with
their slips; BMX files are the CDC's own SAS transport files with the ages of the DEMO file of the same cycle, so three cycles stand here twice, as
published and as tidied; groups of fewer than ${FEWEST} children are left out. Each method is judged on the children it serves.

The shipped model was fitted to some of these children, so these figures flatter it; [the accuracy page](../accuracy.md) judges models that
have not seen the children. Intervals are Wilson's and take children as independent. What must be known before anybody relies on an
estimate stands in the [README](../../README.md#before-you-rely-on-it).

![Body model on length and arm, by survey](length-and-arm.svg)
${lines.join("\n")}
`,
);
process.stderr.write(`docs/evidence: ${bars.length} surveys with length and arm.\n`);
