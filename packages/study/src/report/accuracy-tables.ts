import { formatNumber } from "@steelyard/core/units";
import type { ErrorSummary, Interval, Proportion, StudyAnalysis } from "../analysis/index.ts";
import { methodId } from "../methods/index.ts";
import type { ReportTable } from "./block.ts";
import { tenth } from "./english-words.ts";
import type { ReportWords } from "./report-words.ts";

interface Line {
  readonly name: string;
  readonly id: string;
  readonly summary: ErrorSummary;
  readonly coverage?: Proportion;
}

/** Columns of a CSV of accuracy. */
const COLUMNS = [
  "n",
  "mean_error_percent",
  "sd_percent",
  "median_error_percent",
  "mad_percent",
  "rmspe_percent",
  "mape_percent",
  "pw10",
  "pw10_low",
  "pw10_high",
  "pw20",
  "pw20_low",
  "pw20_high",
  "pw30",
  "over20",
  "under20",
  "percent_lower_limit",
  "percent_upper_limit",
  "kg_bias",
  "kg_lower_limit",
  "kg_upper_limit",
  "ratio_bias",
  "ratio_lower_limit",
  "ratio_upper_limit",
  "concordance",
  "slope_percent_per_kg",
  "coverage95",
] as const;

export function accuracyTables(analysis: StudyAnalysis, words: ReportWords): readonly ReportTable[] {
  const overall = analysis.methods.flatMap(({ estimates, overall: summary, coverage }): Line[] =>
    summary === undefined
      ? []
      : [
          {
            name: words.methodName(estimates.method),
            id: methodId(estimates.method),
            summary,
            ...(coverage === undefined ? {} : { coverage }),
          },
        ],
  );
  const common = analysis.common.summaries.flatMap((summary, i): Line[] => {
    const method = analysis.methods[i]?.estimates.method;
    return summary === undefined || method === undefined
      ? []
      : [{ name: words.methodName(method), id: methodId(method), summary }];
  });
  const own = overall.length > 1 && overall.some(({ summary }) => summary.n !== analysis.common.children);
  return [
    accuracyTable("accuracy", "Accuracy of each method on the children it serves", overall),
    agreementTable(
      "agreement",
      "Agreement with the scale: bias and limits of agreement, with 95 % intervals",
      overall,
    ),
    ...(own
      ? [
          accuracyTable(
            "accuracy-common",
            `The methods on the same children: the ${formatNumber(analysis.common.children)} that every one of them serves`,
            common,
          ),
        ]
      : []),
  ];
}

/** A method by the strata of a column. */
export function strataTables(
  analysis: StudyAnalysis,
  words: ReportWords,
): readonly { readonly column: string; readonly method: number; readonly table: ReportTable }[] {
  return analysis.methods.flatMap(({ estimates, by }, method) =>
    by.map(({ column, strata }) => ({
      column,
      method,
      table: accuracyTable(
        `accuracy-${method + 1}-by-${column.toLowerCase().replaceAll(/[^a-z0-9]+/g, "-")}`,
        `${words.methodName(estimates.method)}, by ${column}`,
        strata.map(({ name, ...rest }) => ({ name, id: name, ...rest })),
      ),
    })),
  );
}

function accuracyTable(name: string, caption: string, lines: readonly Line[]): ReportTable {
  const covers = lines.some(({ coverage }) => coverage !== undefined);
  return {
    name,
    caption,
    head: [
      "",
      "Children",
      "Mean error",
      "SD",
      "Median",
      "RMSPE",
      "Within 10 %",
      "Within 20 %",
      "Over by > 20 %",
      "Under by > 20 %",
      ...(covers ? ["In 95 % range"] : []),
    ],
    rows: lines.map(({ name: own, summary, coverage }) => [
      own,
      formatNumber(summary.n),
      signed(summary.meanPercent),
      tenth(summary.sdPercent),
      signed(summary.medianPercent),
      tenth(summary.rmspe),
      shareOf(summary.within10),
      shareOf(summary.within20),
      tenth(100 * summary.over20.share),
      tenth(100 * summary.under20.share),
      ...(covers ? [coverage === undefined ? "" : tenth(100 * coverage.share)] : []),
    ]),
    data: {
      columns: ["name", ...COLUMNS],
      rows: lines.map(({ id, summary, coverage }) => [id, ...dataOf(summary, coverage)]),
    },
  };
}

function agreementTable(name: string, caption: string, lines: readonly Line[]): ReportTable {
  const columns = ["bias", "lower_limit", "upper_limit"].flatMap((own) => [own, `${own}_low`, `${own}_high`]);
  const scales = [
    ["percent", "% of true weight", ({ percent }: ErrorSummary) => percent],
    ["kg", "kg", ({ kg }: ErrorSummary) => kg],
    ["ratio", "ratio", ({ ratio }: ErrorSummary) => ratio],
  ] as const;
  const each = lines.flatMap((line) =>
    scales.map(([scale, label, read]) => ({ line, scale, label, limits: read(line.summary) })),
  );
  return {
    name,
    caption,
    head: ["", "Scale", "Bias", "Lower limit", "Upper limit", "Slope, % per kg", "Concordance"],
    rows: each.map(({ line, scale, label, limits }) => [
      line.name,
      label,
      ...[limits.bias, limits.lower, limits.upper].map((own) => intervalOf(own, scale === "percent" ? 1 : 2)),
      scale === "percent" ? rounded(line.summary.slopePercentPerKg, 2) : "",
      scale === "kg" ? rounded(line.summary.concordance, 3) : "",
    ]),
    data: {
      columns: ["name", "scale", ...columns],
      rows: each.map(({ line, scale, limits }) => [
        line.id,
        scale,
        ...[limits.bias, limits.lower, limits.upper].flatMap(({ value, low, high }) => [value, low, high]),
      ]),
    },
  };
}

function dataOf(s: ErrorSummary, coverage: Proportion | undefined): readonly (string | number)[] {
  return [
    s.n,
    s.meanPercent,
    s.sdPercent,
    s.medianPercent,
    s.madPercent,
    s.rmspe,
    s.mape,
    s.within10.share,
    s.within10.low,
    s.within10.high,
    s.within20.share,
    s.within20.low,
    s.within20.high,
    s.within30.share,
    s.over20.share,
    s.under20.share,
    s.percent.lower.value,
    s.percent.upper.value,
    s.kg.bias.value,
    s.kg.lower.value,
    s.kg.upper.value,
    s.ratio.bias.value,
    s.ratio.lower.value,
    s.ratio.upper.value,
    s.concordance,
    s.slopePercentPerKg,
    coverage?.share ?? "",
  ];
}

function shareOf({ share, low, high }: Proportion): string {
  return `${tenth(100 * share)} (${tenth(100 * low)} to ${tenth(100 * high)})`;
}

function intervalOf({ value, low, high }: Interval, decimals: number): string {
  return `${rounded(value, decimals)} (${rounded(low, decimals)} to ${rounded(high, decimals)})`;
}

function rounded(value: number, decimals: number): string {
  return formatNumber(Math.round(value * 10 ** decimals) / 10 ** decimals);
}

function signed(value: number): string {
  return `${value >= 0.05 ? "+" : ""}${tenth(value)}`;
}
