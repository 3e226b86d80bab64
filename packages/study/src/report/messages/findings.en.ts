import { formatNumber } from "@steelyard/core/units";
import { describeCalibrationIssue } from "@steelyard/core/wording";

const n = (value: number): string => formatNumber(value);
const round = (value: number, decimals: number): string =>
  formatNumber(Math.round(value * 10 ** decimals) / 10 ** decimals);

/** The part of a report that is drawn by chance or rests on a choice: clusters, doses, calibration, pooled sites. */
export const findingsEn = {
  round: (value: number, decimals: number): string => round(value, decimals),
  range: (low: string, high: string): string => `${low} to ${high}`,
  interval: (value: string, low: string, high: string): string => `${value} (${low} to ${high})`,
  clustersHeading: "Intervals from drawn clusters",
  clustersText: ({
    seed,
    replicates,
    column,
  }: {
    seed: number;
    replicates: number;
    column?: string;
  }): string =>
    `${column === undefined ? "Every row is a cluster of its own" : `Clusters are the words of the column “${column}”: all rows of one are drawn together`}; ${n(replicates)} replicates with seed ${seed}, the same for every method; bias-corrected and accelerated intervals. Where they are clearly wider than the intervals of the accuracy table, these are the ones to report.`,
  clustersLeftOut: (method: string, clusters: number): string =>
    `${method}: ${n(clusters)} clusters are ${clusters < 2 ? "too few" : "too many"} to draw; its intervals are those of the accuracy table.`,
  clustersCaption: "Main figures, % of true weight or of children, with 95 % intervals from drawn clusters",
  clustersHead: [
    "",
    "Clusters",
    "Children",
    "Mean error",
    "RMSPE",
    "MAPE",
    "Within 10 %",
    "Within 20 %",
    "Lower limit",
    "Upper limit",
  ] as readonly string[],
  regressionCaption:
    "Proportional bias and regression-based limits of agreement: percentage error on the mean of estimate and scale",
  regressionHead: ["", "Slope, % per kg", "p"] as readonly string[],
  atKg: (kg: number): string => `At ${n(kg)} kg`,
  consequenceHeading: "What the errors would have meant for doses",
  consequenceText: ({
    version,
    signed,
    every,
  }: {
    version: string;
    signed: boolean;
    every: number;
  }): string =>
    `Every sheet of formulary ${version} (${signed ? "signed by its site" : "an unsigned draft for a licensed reviewer"}) was made for the estimate, and each dose judged against the accepted range per kg of the true weight; sizes of equipment against those for the true weight. ${every > 1 ? `Every ${n(every)}th child was judged.` : "All children with an estimate were judged."}`,
  consequenceCaption:
    "Children by method: with at least one dose outside its accepted range, and doses and sizes in all",
  consequenceHead: [
    "",
    "Children",
    "A dose outside, % of children",
    "Doses outside, %",
    "too large, %",
    "too small, %",
    "Sizes changed, %",
  ] as readonly string[],
  dosesCaption: (method: string, lines: number): string =>
    `${method}: the ${n(lines)} lines that most often left their accepted range`,
  dosesHead: ["Line", "Doses", "Outside, %", "too large, %", "too small, %"] as readonly string[],
  sizesCaption: "Sizes of equipment that differ from those for the true weight, % of children",
  sizesHead: [""] as readonly string[],
  learningHeading: "What calibrating this site would gain",
  learningNone: (issue: Parameters<typeof describeCalibrationIssue>[0]): string =>
    `No calibration: ${describeCalibrationIssue(issue)}`,
  learningGain: (given: {
    folds: number;
    children: number;
    every: number;
    before: string;
    after: string;
    gain: string;
    low: string;
    high: string;
    coverageBefore: string;
    coverageAfter: string;
  }): string =>
    `The body model was given all measurements of ${given.every > 1 ? `every ${n(given.every)}th child, ` : ""}${n(given.children)} children. Judged by a calibration that has not seen them (${n(given.folds)} folds), ${given.after} % are within 10 %, in place of ${given.before} % uncalibrated: a gain of ${given.gain} points (95 % interval ${given.low} to ${given.high}). The 95 % range holds ${given.coverageAfter} % of scale weights, before it ${given.coverageBefore} %.`,
  learningCaption:
    "Learning curve: accuracy on the other children after calibrating with some, mean over 10 draws",
  learningHead: [
    "Calibrated with",
    "Judged",
    "Mean error",
    "RMSPE",
    "Within 10 %",
    "lowest to highest draw",
    "Within 20 %",
    "In 95 % range",
  ] as readonly string[],
  learningAxis: "Children calibrated with",
  learningShare: "Within 10 % of the scale weight, %",
  forestCaption: (method: string): string =>
    `${method}: within 10 % of the scale weight by site, pooled (diamond) and another site's range (line under it)`,
  forestAxis: "Within 10 % of the scale weight, % of children, with 95 % intervals",
  pooled: "Pooled",
  anotherSite: "Another site",
  verdict: { superior: "better", "non-inferior": "not worse", undecided: "undecided", inferior: "worse" },
};

export type FindingsWords = typeof findingsEn;
