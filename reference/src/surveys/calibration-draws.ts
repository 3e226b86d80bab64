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

/** How a survey is estimated before and after calibration by so many of its children; means over the draws. */
export interface CalibrationDraws {
  readonly dataset: string;
  readonly size: number;
  readonly before: DrawnAccuracy;
  readonly after: DrawnAccuracy;
  /** Draws whose calibration was refused. */
  readonly refused: number;
}

/** Means over draws, %. */
interface DrawnAccuracy {
  readonly pw10: number;
  readonly meanError: number;
  readonly coverage: number;
}

/** For each survey: 30 or 100 random children calibrate, the rest are judged; means of 50 draws. */
export function calibrationDraws(given: {
  children: readonly SurveyChild[];
  modelFor: (child: SurveyChild) => BodyModel;
}): readonly CalibrationDraws[] {
  const datasets = [...new Set(given.children.map(({ dataset }) => dataset))].sort();
  return datasets.flatMap((dataset) => {
    const own = given.children.filter((child) => child.dataset === dataset);
    if (own.length < fewest) return [];
    return sizes.map((size) => draw({ dataset, own, size, model: given.modelFor(own[0] as SurveyChild) }));
  });
}

/** The draws as a Markdown table. */
export function calibrationTable(drawn: readonly CalibrationDraws[]): string {
  const lines = drawn.map(({ dataset, size, before, after, refused }) => {
    const pairs = (["meanError", "coverage"] as const).flatMap((key) => [before[key], after[key]]);
    const cells = [before.pw10, after.pw10, after.pw10 - before.pw10, ...pairs].map((value) =>
      value.toFixed(1),
    );
    return `| ${[dataset, size, ...cells, refused].join(" | ")} |`;
  });
  return `${draws} draws of children to calibrate with; the rest are judged, without and with the calibration. Length + arm.

| survey | children | within 10 %, before | after | gain | mean error %, before | after | covers, before | after | refused |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${lines.join("\n")}`;
}

function draw(given: {
  dataset: string;
  own: readonly SurveyChild[];
  size: number;
  model: BodyModel;
}): CalibrationDraws {
  const { dataset, own, size, model } = given;
  const random = seededRandom(size * 7919);
  const sums = [0, 1].map(() => ({ pw10: 0, meanError: 0, coverage: 0 }));
  let refused = 0;
  for (let i = 0; i < draws; i++) {
    const { chosen, rest } = split({ children: own, size, random });
    const rows = chosen.map((child) => ({ measurements: lengthAndArm(child), weightKg: child.weightKg }));
    const calibrated = calibrateSite(rows, { model });
    if (!calibrated.ok) refused++;
    const sites = [uncalibratedSite, calibrated.ok ? calibrated.value.site : uncalibratedSite];
    sites.forEach((site, at) => {
      const { rows: judged } = judge({ children: rest, measure: lengthAndArm, modelFor: () => model, site });
      const accuracy = measureAccuracy(judged);
      const sum = sums[at] as Record<keyof DrawnAccuracy, number>;
      for (const key of ["pw10", "meanError", "coverage"] as const) sum[key] += accuracy[key] / draws;
    });
  }
  const [before, after] = sums as [DrawnAccuracy, DrawnAccuracy];
  return { dataset, size, before, after, refused };
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
