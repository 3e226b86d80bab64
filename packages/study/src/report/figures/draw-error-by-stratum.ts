import type { Page, Typefaces } from "@steelyard/paper";
import type { StratumAccuracy } from "../../analysis/index.ts";
import type { ReportWords } from "../report-words.ts";
import { createChart } from "./chart.ts";

/** Mean percentage error and limits of agreement of each stratum, one line a stratum. */
export function drawErrorByStratum({
  strata,
  typefaces,
  words,
}: {
  strata: readonly StratumAccuracy[];
  typefaces: Typefaces;
  words: ReportWords;
}): Page {
  const widest = strata.reduce(
    (most, { summary }) => Math.max(most, -summary.percent.lower.value, summary.percent.upper.value),
    20,
  );
  const reach = Math.min(100, 10 * Math.ceil(widest / 10));
  const names = strata.map(({ name, summary }) => `${name} (${words.count(summary.n)})`);
  const chart = createChart({
    typefaces,
    heightMm: Math.max(38, 20 + 7 * strata.length),
    x: { from: -reach, to: reach, label: words.percentageError },
    y: { from: strata.length - 0.5, to: -0.5, label: "", names },
  });
  const held = (value: number): number => chart.x(Math.max(-reach, Math.min(reach, value)));
  chart.line([chart.x(0), chart.y(-0.5)], [chart.x(0), chart.y(strata.length - 0.5)]);
  strata.forEach(({ summary }, i) => {
    const y = chart.y(i);
    const { lower, upper, bias } = summary.percent;
    chart.line([held(lower.value), y], [held(upper.value), y], { widthMm: 0.3 });
    for (const end of [lower.value, upper.value])
      chart.line([held(end), y - 1], [held(end), y + 1], { widthMm: 0.3 });
    chart.dot([held(bias.value), y], 1.1);
  });
  return chart.page(words.percentageError);
}
