import type { Page, Segment, Typefaces } from "@steelyard/paper";
import type { MethodAccuracy, StudyAnalysis } from "../../analysis/index.ts";
import type { ReportWords } from "../report-words.ts";
import { createChart, SOFT } from "./chart.ts";

/** Dots drawn; of more children every n-th, so that a file of any size gives a figure that can be opened. */
const MOST_DOTS = 3000;

/** Percentage error against the mean of estimate and scale, with bias and limits of agreement. */
export function drawBlandAltman({
  analysis,
  method,
  typefaces,
  words,
}: {
  analysis: StudyAnalysis;
  method: MethodAccuracy;
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
