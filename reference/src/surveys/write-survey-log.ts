import type { BodyModel, Measurements } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { accuracyTable } from "../accuracy-table.ts";
import { judge } from "../judge.ts";
import type { SurveyChild, SurveyLoad } from "./read-surveys.ts";

const lengthOnly = (child: SurveyChild): Measurements => ({ lengthCm: centimetres(child.lengthCm) });
const lengthAndArm = (child: SurveyChild): Measurements => ({
  ...lengthOnly(child),
  armMm: millimetres(child.armMm),
});
const lengthArmSex = (child: SurveyChild): Measurements => ({
  ...lengthAndArm(child),
  ...(child.sex === undefined ? {} : { sex: child.sex }),
});

/** Accuracy of a model on each open survey, none of which it was fitted to. Markdown, same bytes for the same data. */
export function writeSurveyLog({ survey, model }: { survey: SurveyLoad; model: BodyModel }): string {
  const { children, dropped } = survey;
  const datasets = [...new Set([...children.map(({ dataset }) => dataset), ...dropped.keys()])].sort();
  const section = (measure: (child: SurveyChild) => Measurements) =>
    datasets.map((dataset) => {
      const own = children.filter((child) => child.dataset === dataset);
      return { dataset, ...judge({ children: own, measure, modelFor: () => model }) };
    });
  const withArm = section(lengthAndArm);
  const table = (judgements: ReturnType<typeof section>): string =>
    accuracyTable(
      "dataset",
      judgements.filter(({ rows }) => rows.length > 0).map(({ dataset, rows }) => [dataset, rows]),
    );
  const thin = (low: number, high: number): string =>
    accuracyTable(
      "dataset",
      withArm
        .map(
          ({ dataset, rows }) =>
            [dataset, rows.filter(({ child }) => child.armMm >= low && child.armMm < high)] as const,
        )
        .filter(([, rows]) => rows.length > 0),
    );
  return `# The model ${model.version} on open surveys it was not fitted to

Written by \`npm run fit\` with \`--surveys\`; do not edit. Errors are (estimate - scale) / scale. Rows are as published, outliers and
unit slips included; the model is not calibrated to any of them. Several of these files were published to teach how to
find bad data: their arm values are noisy or rounded, and a tape that says little about the weight cannot be helped by a model.

## Length + arm

${table(withArm)}

Refused, a measurement outside the model's range: ${withArm
    .filter(({ refused }) => refused > 0)
    .map(({ dataset, refused }) => `${dataset} ${refused}`)
    .join(", ")}.

## Length + arm + sex

${table(section(lengthArmSex))}

## Length alone

${table(section(lengthOnly))}

## Length + arm, arm under 115 mm

${thin(0, 115)}

## Length + arm, arm 115 to under 125 mm

${thin(115, 125)}

## Rows left out

| dataset | reason | rows |
| --- | --- | ---: |
${[...dropped]
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .flatMap(([dataset, reasons]) => [...reasons].map(([reason, n]) => `| ${dataset} | ${reason} | ${n} |`))
  .join("\n")}
`;
}
