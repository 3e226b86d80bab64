import { plainFormulas } from "@steelyard/study/formulas";
import { type Accuracy, measureAccuracy } from "../accuracy.ts";
import { accuracyTable } from "../accuracy-table.ts";
import type { AccuracyResults, SurveyAccuracy } from "./compute-accuracy.ts";
import { groupByZ } from "./group-by-z.ts";
import { classesTable, formulasTable, groupsTable, onemoreTable } from "./page-tables.ts";
import { proposedMinimum, publishedClasses, publishedOverestimates } from "./published-classes.ts";
import type { Way } from "./regression-to-the-mean.ts";

/** An entry of the source registry, as far as the page shows it. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly authors?: string;
  readonly year?: number;
  readonly doi?: string;
  readonly verification: string;
}

/** The accuracy page: Markdown, the same bytes for the same results. */
export function writeAccuracyPage(results: AccuracyResults, sources: readonly Source[]): string {
  const { model, nhanes, formulas, surveys, placed } = results;
  const clumsy = measureAccuracy(results.withFieldError);
  const least = `${proposedMinimum.within10} % within 10 % and ${proposedMinimum.within20} % within 20 %`;
  const arm = accuracyOf(nhanes.get("length + arm"));
  return `# Accuracy

Written by \`npm run accuracy\`; do not edit. Model ${model.version}. Steelyard is decision support for trained clinicians and not a certified
medical device: weigh the child as soon as you can.

An error is (estimate - scale) / scale, in per cent: above 0 the estimate is too heavy. "Within 10 %" is the share of children whose error lies
between -10 and 10 %. Every child is judged by a fit that has not seen it: NHANES in five folds by child, each open survey by a fit without
it. The tables by length are in the [log of the fit](../reference/fit-log.md), calibration is in the [log of the
surveys](../reference/surveys-log.md), the model itself in [its own page](model.md).

There is no goal that evidence supports. The review of 2017 that pooled the published methods proposed a minimum: more than ${least} of the
scale (\`wells2017\`, read). The dashed lines in the figures are that minimum.

**What these figures are not**: a trial at the bedside. NHANES is measured by trained people, slowly, on healthy children of the United
States. With errors of 1 cm in the length and 3 mm in the arm added (SD), ${clumsy.pw10.toFixed(1)} % stay within 10 % from length + arm instead of ${arm.pw10.toFixed(1)} %; a population unlike the fit's costs more, see the surveys below.

## NHANES: every set of measurements

Children of 2 months to under 18 years.

${accuracyTable(
  "known",
  [...nhanes].map(([name, rows]) => [name, rows] as const),
)}

${figure("within-by-length", "Share of children within 10 and 20 % of the scale by length, for four sets of measurements")}

${figure("error-by-length", "Quantiles of the percentage error by length, from length alone and from length, arm and sex")}

${figure("coverage-by-length", "Share of scale weights inside the 95 % interval by length and sex")}

In the last figure the number of children stands above each mark, the light band is 93 to 97 %, and the dark bars are where chance would put 95 of
100 perfect intervals.

${figure("weight-by-arm", "Estimated weight against arm circumference at five lengths, with the 95 % interval")}

The shape of the model: weight against arm at five lengths, sex unknown, over the arms that 998 of 1,000 children of that length have (to 450 mm), with
the 95 % interval.

## Beside published methods

Classes of method, pooled or from one study, on other children than ours: the comparison is rough. "read" means that the figure was seen in the source, "memory"
that it still has to be.

${classesTable(results)}

## Beside plain formulas, on the same children

Each formula on the NHANES children it was made for and, beside it, the model from length + arm + sex on the same children. Ages are completed years or months.
The last two give an ideal weight: their error says how far children are from ideal, not that the formula is wrong.

${formulasTable(formulas)}

## Open surveys

Length alone, length + arm, and after 100 of the survey's own children have calibrated the site (means of 50 draws, the others judged). The mean error:

${figure("survey-errors", "Mean percentage error on each open survey")}

${figure("survey-within", "Share of children within 10 % on each open survey")}

Rows are as published, slips included, and the site is not calibrated: the interval holds the between-population variance. Some of these files were published to
teach how bad data look.

${surveys.map(surveySection).join("\n\n")}

## Thin children, and regression to the mean

Take the children whose *true* weight for length is below -3 z, and look how they were estimated. They come out too heavy, by any method. This is not a fault that a
better model could mend, and here is why.

Of all children with the same length and arm, some weigh less than the average of them and some more. The estimate is the middle, as it must be: nothing that was measured tells
them apart. Now pick the thinnest *by the scale*. You have picked, from every such set of children, those that weigh less than their middle, so the middle is too heavy
for them; among the heaviest it is too light for the same reason. At the bedside nobody can pick like that, since the scale is what is missing. What can be picked is
an estimate: of the children *estimated* below -3, what do they weigh? That is the honest question, and there the error is a few per cent at most.

The proof is in the column "weights drawn from the model". There each child was given a weight drawn at random from its own estimate, so that the model is right by construction, to
the last digit. Grouped by those weights it is still "wrong" by much the same amount.

Mean error in per cent (children), z by WHO 2006 weight for length:

${placed.map(({ name, ways }) => `**${name}**\n\n${groupsTable(ways)}`).join("\n\n")}

${figure("regression-to-the-mean", "Mean percentage error by weight for length, grouped by the true weight and by the estimate")}

Two things add to it in the outermost groups of the surveys. A slip of the scale or of the length makes a child "below -3" or "above 3" on paper, and the estimate is then right and the
group wrong. And the thinnest arms are estimated a little too heavy (the [log](../reference/surveys-log.md) has them by survey). For comparison, published, with our sign: a
regression on height alone overestimated children below -3 by ${publishedOverestimates.height.toFixed(1)} %, length-only tapes by ${publishedOverestimates.tapes.map((tape) => tape.toFixed(1)).join(" and ")} % (\`ralston2016\`, read).

What shrinks the error is knowing more, because it leaves less to chance. What one more fact takes away in children grouped by their true weight; the build is simulated from
the true weight with the published error of the eye, 1.05 SD (\`build-by-eye-2025\`), cut into five words:

${onemoreTable(placed)}

Mean error in per cent (children). The tape does most of it: in the children of ${placed[0]?.name} with a true z of -3 to -2, a build by eye alone takes
away ${takenAway(placed, "build")} % of the error that the length leaves, the arm alone ${takenAway(placed, "arm")} %, both together ${takenAway(placed, "armBuild")} %.

## Sources

${sourceList(sources)}
`;
}

function accuracyOf(rows: Parameters<typeof measureAccuracy>[0] | undefined): Accuracy {
  return measureAccuracy(rows ?? []);
}

/** Share of the error from length alone that another way does not make, in thin children of the first population, %. */
function takenAway(placed: AccuracyResults["placed"], way: Way): string {
  const thin = (own: Way): number =>
    groupByZ(placed[0]?.ways[own] ?? [], "trueZ").find(({ name }) => name === "-3 to -2")?.meanError ?? 0;
  return (100 * (1 - thin(way) / thin("length"))).toFixed(0);
}

function figure(name: string, description: string): string {
  return `![${description}](figures/${name}.svg)`;
}

function surveySection({ dataset, country, sets, formulas }: SurveyAccuracy): string {
  return `### ${dataset}

${country.charAt(0).toUpperCase()}${country.slice(1)}.

${accuracyTable("known", sets)}

${formulasTable(formulas)}`;
}

function sourceList(sources: readonly Source[]): string {
  const ids = [
    ...publishedClasses.map(({ sourceId }) => sourceId),
    ...plainFormulas.map(({ sourceId }) => sourceId),
    "nhanes",
    "nutrition-surveys",
    "ralston2016",
    "who-growth-2006",
  ];
  return [...new Set(ids)]
    .sort()
    .map((id) => {
      const found = sources.find((source) => source.id === id);
      if (found === undefined) throw new Error(`Cannot cite ${id} as docs/sources.json does not have it`);
      const { title, authors, year, doi, verification } = found;
      const parts = [authors, title, year, doi === undefined ? undefined : `doi ${doi}`];
      return `- \`${id}\`: ${parts.filter((part) => part !== undefined).join(". ")}. ${verification}.`;
    })
    .join("\n");
}
