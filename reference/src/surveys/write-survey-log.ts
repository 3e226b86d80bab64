import {
  type BodyModel,
  type Measurements,
  referenceSite,
  type SiteProfile,
  uncalibratedSite,
} from "@steelyard/core/body";
import { accuracyTable } from "../accuracy-table.ts";
import { lifeDataset } from "../fit/low-birth-weight-infants.ts";
import { judge } from "../judge.ts";
import { betweenSurveys } from "./between-surveys.ts";
import { calibrationDraws, calibrationTable } from "./calibration-draws.ts";
import { type SurveyChild, type SurveyLoad, weighedChildren } from "./read-surveys.ts";
import { lengthAndArm, lengthArmSex, lengthOnly } from "./survey-measures.ts";

/**
 * Accuracy of the model on each open survey, always by a fit that has not seen it: the LIFE infants are judged by the fit without
 * them. Markdown, same bytes for the same data.
 */
export function writeSurveyLog(given: {
  survey: SurveyLoad;
  modelFor: (child: SurveyChild) => BodyModel;
  /** Of the fit. */
  version: string;
}): string {
  const { survey, modelFor, version } = given;
  const { dropped } = survey;
  const children = weighedChildren(survey);
  const datasets = [...new Set([...children.map(({ dataset }) => dataset), ...dropped.keys()])].sort();
  const section = (measure: (child: SurveyChild) => Measurements, site: SiteProfile) =>
    datasets.map((dataset) => {
      const own = children.filter((child) => child.dataset === dataset);
      return { dataset, ...judge({ children: own, measure, modelFor, site }) };
    });
  const withArm = section(lengthAndArm, uncalibratedSite);
  const table = (judgements: ReturnType<typeof section>): string =>
    accuracyTable(
      "dataset",
      judgements.filter(({ rows }) => rows.length > 0).map(({ dataset, rows }) => [dataset, rows]),
    );
  const thin = (low: number, high: number): string =>
    accuracyTable("dataset", [
      ...withArm
        .map(
          ({ dataset, rows }) =>
            [dataset, rows.filter(({ child }) => child.armMm >= low && child.armMm < high)] as const,
        )
        .filter(([, rows]) => rows.length > 0),
      [
        "all together",
        withArm.flatMap(({ rows }) => rows.filter(({ child }) => child.armMm >= low && child.armMm < high)),
      ],
    ]);
  return `# The model ${version} on open surveys it was not fitted to

Written by \`npm run fit\` with \`--surveys\`; do not edit. Errors are (estimate - scale) / scale. Rows are as published, outliers and
unit slips included. Each survey is judged by a fit that has not seen it: the LIFE infants (${lifeDataset}) by the fit without them. Several of
these files were published to teach how to find bad data: their arm values are noisy or rounded, and a tape that says little about
the weight cannot be helped by a model.

## Length + arm, as an uncalibrated site

The interval holds the between-population variance and the default measurement errors.

${table(withArm)}

Refused, a measurement outside the model's range: ${withArm
    .filter(({ refused }) => refused > 0)
    .map(({ dataset, refused }) => `${dataset} ${refused}`)
    .join(", ")}.

## Length + arm + sex, as an uncalibrated site

${table(section(lengthArmSex, uncalibratedSite))}

## Length + arm, as if every site were like the fit

No between-population variance and no measurement error beyond the fit's own: what the interval would claim without them.

${table(section(lengthAndArm, referenceSite))}

## Length alone

${table(section(lengthOnly, uncalibratedSite))}

## Length + arm, arm under 115 mm

${thin(0, 115)}

## Length + arm, arm 115 to under 125 mm

${thin(115, 125)}

## Between-population variance

${betweenSurveys({ children, modelFor })}

## Calibration

${calibrationTable(calibrationDraws({ children, modelFor }))}

## Rows left out

| dataset | reason | rows |
| --- | --- | ---: |
${[...dropped]
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .flatMap(([dataset, reasons]) => [...reasons].map(([reason, n]) => `| ${dataset} | ${reason} | ${n} |`))
  .join("\n")}
`;
}
