import type { Page, Typefaces } from "@steelyard/paper";
import type { PooledFigure } from "../../pooling/index.ts";
import type { FindingsWords } from "../messages/findings.en.ts";
import { createChart, SOFT } from "./chart.ts";

/** Forest plot of a share over sites: each with its interval and a square as large as its share in the pooled figure, the pooled diamond, and the range of another site. */
export function drawForest({
  figure: { sites, pooled, prediction },
  typefaces,
  words,
}: {
  figure: PooledFigure;
  typefaces: Typefaces;
  words: FindingsWords;
}): Page {
  const names = [
    ...sites.map(({ site, children }) => `${site} (${words.round(children, 0)})`),
    words.pooled,
    ...(prediction === undefined ? [] : [words.anotherSite]),
  ];
  const chart = createChart({
    typefaces,
    heightMm: Math.max(38, 20 + 7 * names.length),
    x: { from: 0, to: 100, label: words.forestAxis },
    y: { from: names.length - 0.5, to: -0.5, label: "", names },
  });
  const most = Math.max(...sites.map(({ share }) => share));
  sites.forEach(({ value, low, high, share }, i) => {
    const y = chart.y(i);
    const half = 0.5 + 0.9 * Math.sqrt(share / most);
    chart.line([chart.x(low), y], [chart.x(high), y], { widthMm: 0.35 });
    chart.items.push({
      kind: "rectangle",
      xMm: chart.x(value) - half,
      yMm: y - half,
      widthMm: 2 * half,
      heightMm: 2 * half,
      fill: "#000000",
    });
  });
  const at = sites.length;
  const [left, middle, right, y] = [
    chart.x(pooled.low),
    chart.x(pooled.value),
    chart.x(pooled.high),
    chart.y(at),
  ];
  chart.items.push({
    kind: "path",
    segments: [["M", left, y], ["L", middle, y - 1.8], ["L", right, y], ["L", middle, y + 1.8], ["Z"]],
    fill: "#000000",
  });
  chart.line([middle, chart.y(-0.5)], [middle, y], { colour: SOFT, widthMm: 0.2, dashMm: [1.5, 1.2] });
  if (prediction !== undefined)
    chart.line([chart.x(prediction.low), chart.y(at + 1)], [chart.x(prediction.high), chart.y(at + 1)], {
      colour: SOFT,
      widthMm: 0.7,
    });
  return chart.page(words.forestAxis);
}
