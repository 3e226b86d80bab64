import type { Page, Typefaces } from "@steelyard/paper";
import type { LearningPoint } from "../../calibration/index.ts";
import type { FindingsWords } from "../messages/findings.en.ts";
import { createChart } from "./chart.ts";

/** Share within 10 % of children not calibrated with, by how many were: the mean over draws, with the lowest and highest. */
export function drawLearningCurve({
  curve,
  typefaces,
  words,
}: {
  curve: readonly LearningPoint[];
  typefaces: Typefaces;
  words: FindingsWords;
}): Page {
  const least = Math.min(...curve.map(({ within10Range }) => within10Range.low));
  const from = Math.max(0, 10 * Math.floor(least / 10 - 0.5));
  const chart = createChart({
    typefaces,
    heightMm: 70,
    x: { from: 0, to: 1.05 * Math.max(...curve.map(({ size }) => size)), label: words.learningAxis },
    y: { from, to: 100, label: words.learningShare },
  });
  curve.forEach(({ size, within10Percent, within10Range }, i) => {
    const x = chart.x(size);
    const before = curve[i - 1];
    if (before !== undefined)
      chart.line([chart.x(before.size), chart.y(before.within10Percent)], [x, chart.y(within10Percent)]);
    chart.line([x, chart.y(within10Range.low)], [x, chart.y(within10Range.high)], { widthMm: 0.4 });
    chart.dot([x, chart.y(within10Percent)], 1.1);
  });
  return chart.page(words.learningAxis);
}
