import type { BootstrapInterval } from "../bootstrap/index.ts";
import type { LearningPoint } from "../calibration/index.ts";
import type { StudyFindings } from "../findings/index.ts";
import type { Block, ReportTable } from "./block.ts";
import { consequenceBlocks } from "./consequence-blocks.ts";
import { drawLearningCurve } from "./figures/draw-learning-curve.ts";
import { findingsEn as words } from "./messages/findings.en.ts";
import type { ReportInput } from "./report-input.ts";

const CLUSTERED = [
  "meanPercent",
  "rmspe",
  "mape",
  "within10",
  "within20",
  "lowerLimit",
  "upperLimit",
] as const;
/** Sizes at which regression-based limits are printed, kg. */
const SIZES_KG = [5, 10, 20, 30, 40];

/** Gives a method's name from its id. */
export type NameOf = (method: string) => string;

/** Clusters, regression-based limits, doses and calibration: the blocks of `examineStudy`. */
export function findingsBlocks(
  findings: StudyFindings,
  { typefaces, nameOf }: Pick<ReportInput, "typefaces"> & { readonly nameOf: NameOf },
): Block[] {
  const { bootstrap, seed, consequences } = findings;
  return [
    { type: "heading", text: words.clustersHeading, level: 2 },
    { type: "text", text: words.clustersText({ ...bootstrap, seed }) },
    ...bootstrap.leftOut.map(
      ({ method, clusters }): Block => ({
        type: "text",
        text: words.clustersLeftOut(nameOf(method), clusters),
      }),
    ),
    ...(bootstrap.methods.length === 0 ? [] : [tableBlock(clusterTable(findings, nameOf))]),
    ...(findings.regression.length === 0 ? [] : [tableBlock(regressionTable(findings, nameOf))]),
    ...(consequences.length === 0 ? [] : consequenceBlocks(consequences, nameOf)),
    ...learningBlocks(findings, typefaces),
  ];
}

function clusterTable({ bootstrap, seed }: StudyFindings, nameOf: NameOf): ReportTable {
  const text = (own: BootstrapInterval | undefined): string =>
    own === undefined
      ? ""
      : words.interval(words.round(own.value, 1), words.round(own.bca.low, 1), words.round(own.bca.high, 1));
  return {
    name: "accuracy-clusters",
    caption: words.clustersCaption,
    head: words.clustersHead,
    rows: bootstrap.methods.map(({ method, clusters, children, figures }) => [
      nameOf(method),
      words.round(clusters, 0),
      words.round(children, 0),
      ...CLUSTERED.map((name) => text(figures[name])),
    ]),
    data: {
      columns: [
        "method",
        "figure",
        "clusters",
        "children",
        "replicates",
        "seed",
        "value",
        "standard_error",
        "bca_low",
        "bca_high",
        "percentile_low",
        "percentile_high",
      ],
      rows: bootstrap.methods.flatMap(({ method, clusters, children, figures }) =>
        Object.entries(figures).map(([name, { value, standardError, bca, percentile }]) => [
          method,
          name,
          clusters,
          children,
          bootstrap.replicates,
          seed,
          value,
          standardError,
          bca.low,
          bca.high,
          percentile.low,
          percentile.high,
        ]),
      ),
    },
  };
}

function regressionTable({ regression }: StudyFindings, nameOf: NameOf): ReportTable {
  const shown = SIZES_KG.filter((kg) =>
    regression.some(({ sizesKg }) => kg >= sizesKg.least && kg <= sizesKg.most),
  );
  return {
    name: "regression-limits",
    caption: words.regressionCaption,
    head: [...words.regressionHead, ...shown.map(words.atKg)],
    rows: regression.map(({ method, limits, sizesKg }) => [
      nameOf(method),
      words.interval(
        words.round(limits.bias.slope.value, 2),
        words.round(limits.bias.slope.low, 2),
        words.round(limits.bias.slope.high, 2),
      ),
      limits.bias.p < 0.001 ? `< ${words.round(0.001, 3)}` : words.round(limits.bias.p, 3),
      ...shown.map((kg) => {
        if (kg < sizesKg.least || kg > sizesKg.most) return "";
        const { bias, lower, upper } = limits.at(kg);
        return words.interval(words.round(bias, 1), words.round(lower, 1), words.round(upper, 1));
      }),
    ]),
    data: {
      columns: [
        "method",
        "children",
        "intercept",
        "slope",
        "slope_low",
        "slope_high",
        "slope_p",
        "residual_intercept",
        "residual_slope",
        "least_kg",
        "most_kg",
      ],
      rows: regression.map(({ method, limits: { n, bias, spread }, sizesKg }) => [
        method,
        n,
        bias.intercept.value,
        bias.slope.value,
        bias.slope.low,
        bias.slope.high,
        bias.p,
        spread.intercept.value,
        spread.slope.value,
        sizesKg.least,
        sizesKg.most,
      ]),
    },
  };
}

function learningBlocks({ learning }: StudyFindings, typefaces: ReportInput["typefaces"]): Block[] {
  const { gain, curve, every, children } = learning;
  const heading: Block = { type: "heading", text: words.learningHeading, level: 2 };
  if (!gain.ok) return [heading, { type: "text", text: words.learningNone(gain.error) }];
  const { before, after, within10Gain, folds } = gain.value;
  const p = (value: number): string => words.round(value, 1);
  const text = words.learningGain({
    folds,
    children: children - gain.value.leftOut,
    every,
    before: p(before.within10Percent),
    after: p(after.within10Percent),
    gain: p(within10Gain.value),
    low: p(within10Gain.low),
    high: p(within10Gain.high),
    coverageBefore: p(before.coveragePercent),
    coverageAfter: p(after.coveragePercent),
  });
  return [
    heading,
    { type: "text", text },
    ...(curve.length < 2
      ? []
      : [
          tableBlock(learningTable(curve)),
          {
            type: "figure" as const,
            name: "learning-curve",
            caption: words.learningCaption,
            page: drawLearningCurve({ curve, typefaces, words }),
          },
        ]),
  ];
}

function learningTable(curve: readonly LearningPoint[]): ReportTable {
  const p = (value: number): string => words.round(value, 1);
  return {
    name: "learning-curve",
    caption: words.learningCaption,
    head: words.learningHead,
    rows: curve.map((point) => [
      words.round(point.size, 0),
      words.round(point.children, 0),
      p(point.meanErrorPercent),
      p(point.rmspe),
      p(point.within10Percent),
      words.range(p(point.within10Range.low), p(point.within10Range.high)),
      p(point.within20Percent),
      p(point.coveragePercent),
    ]),
    data: {
      columns: [
        "calibrated_with",
        "judged",
        "mean_error_percent",
        "rmspe_percent",
        "pw10_percent",
        "pw10_lowest",
        "pw10_highest",
        "pw20_percent",
        "coverage95_percent",
        "refused_draws",
      ],
      rows: curve.map((point) => [
        point.size,
        point.children,
        point.meanErrorPercent,
        point.rmspe,
        point.within10Percent,
        point.within10Range.low,
        point.within10Range.high,
        point.within20Percent,
        point.coveragePercent,
        point.refused,
      ]),
    },
  };
}

function tableBlock(table: ReportTable): Block {
  return { type: "table", table };
}
