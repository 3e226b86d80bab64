import type { Page, Typefaces } from "@steelyard/paper";
import type { Proportion } from "../../analysis/index.ts";
import type { ReportWords } from "../report-words.ts";
import { createChart, SOFT } from "./chart.ts";

/**
 * Share within 10 % and 20 % of the scale, with Wilson intervals: one line a method or a site. Serves as the forest plot too.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { createTypefaces } from "@steelyard/paper";
 * import { drawWithinBars, ENGLISH_REPORT } from "@steelyard/study/report";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const share = { count: 9, n: 10, share: 0.9, low: 0.6, high: 0.98 };
 * const lines = [{ name: "chart", within10: share, within20: share }];
 * assert.equal(drawWithinBars({ lines, typefaces, words: ENGLISH_REPORT }).widthMm, 170);
 * ```
 */
export function drawWithinBars({
  lines,
  typefaces,
  words,
}: {
  lines: readonly { readonly name: string; readonly within10: Proportion; readonly within20: Proportion }[];
  typefaces: Typefaces;
  words: ReportWords;
}): Page {
  const names = lines.map(({ name }) => name);
  const heightMm = Math.max(38, 20 + 9 * lines.length);
  const chart = createChart({
    typefaces,
    heightMm,
    x: { from: 0, to: 100, label: words.withinAxis },
    y: { from: lines.length - 0.5, to: -0.5, label: "", names },
  });
  lines.forEach(({ within10, within20 }, i) => {
    for (const [own, offset, fill] of [
      [within10, -0.14, "#000000"],
      [within20, 0.2, SOFT],
    ] as const) {
      const y = chart.y(i + offset);
      chart.line([chart.x(100 * own.low), y], [chart.x(100 * own.high), y], { widthMm: 0.4, colour: fill });
      if (fill === SOFT)
        chart.items.push({
          kind: "rectangle",
          xMm: chart.x(100 * own.share) - 1,
          yMm: y - 1,
          widthMm: 2,
          heightMm: 2,
          fill: "#ffffff",
          stroke: { colour: SOFT, widthMm: 0.35 },
        });
      else chart.dot([chart.x(100 * own.share), y], 1.1);
    }
  });
  return chart.page(words.withinAxis);
}
