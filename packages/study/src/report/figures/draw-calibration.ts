import type { Page, Typefaces } from "@steelyard/paper";
import type { MethodAccuracy, StudyAnalysis } from "../../analysis/index.ts";
import type { ReportWords } from "../report-words.ts";
import { createChart, GRID } from "./chart.ts";

const GROUPS = 10;

/** Mean scale weight of ten equal groups of children by their estimate, against the mean estimate; on the line means calibrated. */
export function drawCalibration({
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
  const { estimateKg } = method.estimates;
  const weights = analysis.table.numbers.get("weightKg") as Float64Array;
  const known: number[] = [];
  for (let row = 0; row < analysis.table.rows; row++)
    if (!Number.isNaN((estimateKg[row] as number) + (weights[row] as number))) known.push(row);
  if (known.length < 5 * GROUPS) return undefined;
  known.sort((a, b) => (estimateKg[a] as number) - (estimateKg[b] as number) || a - b);
  const points = Array.from({ length: GROUPS }, (_, i): [number, number] => {
    const rows = known.slice(
      Math.floor((i * known.length) / GROUPS),
      Math.floor(((i + 1) * known.length) / GROUPS),
    );
    const mean = (values: Float64Array): number =>
      rows.reduce((sum, row) => sum + (values[row] as number), 0) / rows.length;
    return [mean(estimateKg), mean(weights)];
  });
  const most = 1.05 * Math.max(...points.flat());
  const chart = createChart({
    typefaces,
    x: { from: 0, to: most, label: words.meanEstimate },
    y: { from: 0, to: most, label: words.meanWeight },
  });
  chart.line([chart.x(0), chart.y(0)], [chart.x(most), chart.y(most)], { colour: GRID, widthMm: 0.5 });
  points.slice(1).forEach(([x, y], i) => {
    const [fromX, fromY] = points[i] as [number, number];
    chart.line([chart.x(fromX), chart.y(fromY)], [chart.x(x), chart.y(y)]);
  });
  for (const [x, y] of points) chart.dot([chart.x(x), chart.y(y)], 1.1);
  return chart.page(words.methodName(method.estimates.method));
}
