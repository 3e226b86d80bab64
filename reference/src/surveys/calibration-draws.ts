import { type BodyModel, calibrateSite, uncalibratedSite } from "@steelyard/core/body";
import { measureAccuracy } from "../accuracy.ts";
import { judge } from "../judge.ts";
import { seededRandom } from "../seeded-random.ts";
import type { SurveyChild } from "./read-surveys.ts";
import { lengthAndArm } from "./survey-measures.ts";

const draws = 50;
const sizes = [30, 100] as const;
/** A survey must leave enough children to test on. */
const fewest = 300;

/** For each survey: 30 or 100 random children calibrate, the rest are judged; means of 50 draws. */
export function calibrationDraws(given: {
  children: readonly SurveyChild[];
  modelFor: (child: SurveyChild) => BodyModel;
}): string {
  const datasets = [...new Set(given.children.map(({ dataset }) => dataset))].sort();
  const lines = datasets.flatMap((dataset) => {
    const own = given.children.filter((child) => child.dataset === dataset);
    if (own.length < fewest) return [];
    return sizes.map((size) => line({ dataset, own, size, model: given.modelFor(own[0] as SurveyChild) }));
  });
  return `${draws} draws of children to calibrate with; the rest are judged, without and with the calibration. Length + arm.

| survey | children | within 10 %, before | after | gain | mean error %, before | after | covers, before | after | refused |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${lines.join("\n")}`;
}

function line(given: {
  dataset: string;
  own: readonly SurveyChild[];
  size: number;
  model: BodyModel;
}): string {
  const { dataset, own, size, model } = given;
  const random = seededRandom(size * 7919);
  const sums = [0, 0, 0, 0, 0, 0];
  let refused = 0;
  for (let draw = 0; draw < draws; draw++) {
    const { chosen, rest } = split({ children: own, size, random });
    const rows = chosen.map((child) => ({ measurements: lengthAndArm(child), weightKg: child.weightKg }));
    const calibrated = calibrateSite(rows, { model });
    if (!calibrated.ok) refused++;
    const sites = [uncalibratedSite, calibrated.ok ? calibrated.value.site : uncalibratedSite];
    sites.forEach((site, i) => {
      const { rows: judged } = judge({ children: rest, measure: lengthAndArm, modelFor: () => model, site });
      const { pw10, meanError, coverage } = measureAccuracy(judged);
      [pw10, meanError, coverage].forEach((value, j) => {
        sums[2 * j + i] = (sums[2 * j + i] as number) + value / draws;
      });
    });
  }
  const [before, after, errorBefore, errorAfter, coverBefore, coverAfter] = sums.map((sum) => sum.toFixed(1));
  const gain = ((sums[1] as number) - (sums[0] as number)).toFixed(1);
  return `| ${dataset} | ${size} | ${before} | ${after} | ${gain} | ${errorBefore} | ${errorAfter} | ${coverBefore} | ${coverAfter} | ${refused} |`;
}

/** A random choice of `size` children, and at most 600 of the rest to judge. */
function split(given: { children: readonly SurveyChild[]; size: number; random: () => number }): {
  readonly chosen: readonly SurveyChild[];
  readonly rest: readonly SurveyChild[];
} {
  const shuffled = [...given.children];
  for (let i = shuffled.length - 1; i > 0; i--) {
    const j = Math.floor(given.random() * (i + 1));
    [shuffled[i], shuffled[j]] = [shuffled[j] as SurveyChild, shuffled[i] as SurveyChild];
  }
  return { chosen: shuffled.slice(0, given.size), rest: shuffled.slice(given.size, given.size + 600) };
}
