import type { Page, Segment, Typefaces } from "@steelyard/paper";
import type { MethodAccuracy, StudyAnalysis } from "../../analysis/index.ts";
import type { MethodRegression } from "../../findings/index.ts";
import type { ReportWords } from "../report-words.ts";
import { type Chart, createChart, SOFT } from "./chart.ts";

/** Dots drawn; of more children every n-th, so that a file of any size gives a figure that can be opened. */
const MOST_DOTS = 3000;
const REGRESSION = "#8a8a8a";

/** Percentage error against the mean of estimate and scale, with bias and limits of agreement, plain and by regression. */
export function drawBlandAltman({
  analysis,
  method,
  regression,
  typefaces,
  words,
}: {
  analysis: StudyAnalysis;
  method: MethodAccuracy;
  regression?: MethodRegression;
  typefaces: Typefaces;
  words: ReportWords;
}): Page | undefined {
  const { overall, estimates } = method;
  if (overall === undefined) return undefined;
  const weights = analysis.table.numbers.get("weightKg") as Float64Array;
  const every = Math.max(1, Math.ceil(overall.n / MOST_DOTS));
  const dots: [number, number][] = [];
  let seen = 0;
  for (let row = 0; row < analysis.table.rows; row++) {
    const estimate = estimates.estimateKg[row] as number;
    const weight = weights[row] as number;
    if (Number.isNaN(estimate) || Number.isNaN(weight) || seen++ % every !== 0) continue;
    dots.push([(estimate + weight) / 2, (100 * (estimate - weight)) / weight]);
  }
  const reach = Math.max(
    30,
    Math.min(100, 10 * Math.ceil(Math.max(-overall.percent.lower.low, overall.percent.upper.high) / 10) + 10),
  );
  const largest = dots.reduce((most, [kg]) => Math.max(most, kg), 1);
  const chart = createChart({
    typefaces,
    x: { from: 0, to: largest * 1.02, label: words.meanOfBoth },
    y: { from: -reach, to: reach, label: words.percentageError },
  });
  const right = chart.x(largest * 1.02);
  // One path for all: a figure of thousands of shapes is slow to open and to read out.
  chart.items.push({
    kind: "path",
    segments: dots.flatMap(([kg, error]): Segment[] => {
      const [xMm, yMm] = [chart.x(kg), chart.y(Math.max(-reach, Math.min(reach, error)))];
      return [
        ["M", xMm, yMm],
        ["L", xMm, yMm + 0.01],
      ];
    }),
    stroke: { colour: SOFT, widthMm: 0.7, cap: "round" },
  });
  if (regression !== undefined) drawRegression(chart, regression, reach);
  const { bias, lower, upper } = overall.percent;
  chart.line([chart.x(0), chart.y(0)], [right, chart.y(0)], { widthMm: 0.2 });
  for (const [value, stroke] of [
    [bias.value, { widthMm: 0.6 }],
    [lower.value, { widthMm: 0.45, dashMm: [2, 1.2] }],
    [upper.value, { widthMm: 0.45, dashMm: [2, 1.2] }],
  ] as const) {
    chart.line([chart.x(0), chart.y(value)], [right, chart.y(value)], stroke);
    chart.text(words.percent(value), [right, chart.y(value) - 1], { anchor: "end", bold: true });
  }
  return chart.page(words.methodName(estimates.method));
}

/** Bias and limits that change with size, as curves of 24 pieces: a limit that meets 0 spread bends. */
function drawRegression(chart: Chart, { limits, sizesKg }: MethodRegression, reach: number): void {
  const steps = 24;
  const sizes = Array.from(
    { length: steps + 1 },
    (_, i) => sizesKg.least + (i / steps) * (sizesKg.most - sizesKg.least),
  );
  for (const [name, dash] of [
    ["bias", undefined],
    ["lower", [0.6, 1]],
    ["upper", [0.6, 1]],
  ] as const)
    chart.items.push({
      kind: "path",
      segments: sizes.map((kg, i): Segment => {
        const y = Math.max(-reach, Math.min(reach, limits.at(kg)[name]));
        return [i === 0 ? "M" : "L", chart.x(kg), chart.y(y)];
      }),
      stroke: { colour: REGRESSION, widthMm: 0.5, ...(dash === undefined ? {} : { dashMm: dash }) },
    });
}
