import { areaY, dot, ruleY, text } from "@observablehq/plot";
import { measureAccuracy } from "../../accuracy.ts";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { below, beside } from "./axis-label.ts";
import { inBand, lengthBands } from "./length-bands.ts";
import { type Shape, symbolKey } from "./symbol-key.ts";

const series: readonly (Shape & {
  readonly sex: "m" | "f";
  readonly name: string;
  readonly aside: number;
})[] = [
  { sex: "m", name: "boys", symbol: "square", fill: "black", aside: -1.5 },
  { sex: "f", name: "girls", symbol: "circle", fill: "white", aside: 1.5 },
];
const fewest = 30;

/** Coverage of the 95 % interval by length and sex, with where chance alone would put it. */
export function drawCoverageByLength({ nhanes }: AccuracyResults): string {
  const rows = nhanes.get("length + arm + sex") ?? [];
  const points = series.flatMap(({ sex, aside }) =>
    lengthBands({ from: 50, to: 200, step: 10 }).flatMap((band) => {
      const own = inBand(rows, band).filter(({ child }) => child.sex === sex);
      if (own.length < fewest) return [];
      const chance = 1.96 * Math.sqrt((95 * 5) / own.length);
      return [{ sex, x: band.middle + aside, covers: measureAccuracy(own).coverage, chance, n: own.length }];
    }),
  );
  return drawSvg({
    title: "Share of scale weights inside the 95 % interval, by length and sex",
    width: 760,
    height: 420,
    marginTop: 44,
    marginLeft: 56,
    marginBottom: 44,
    x: { domain: [50, 200], ...below, label: "lying length, cm (bands of 10 cm)", ticks: 16 },
    y: { domain: [86, 100], ...beside, label: "inside the 95 % interval, %", grid: true },
    marks: [
      areaY([50, 200], { x: (x) => x, y1: 93, y2: 97, fill: "#e8e8e8" }),
      ruleY([95]),
      ...points.map(({ x, chance }) =>
        ruleXBetween({ x, low: 95 - chance, high: Math.min(95 + chance, 100) }),
      ),
      ...series.map(({ sex, symbol, fill }) =>
        dot(
          points.filter((point) => point.sex === sex),
          { x: "x", y: "covers", symbol, fill, stroke: "black", r: 4 },
        ),
      ),
      text(points, {
        x: "x",
        text: (point) => String(point.n),
        frameAnchor: "top",
        dy: -10,
        rotate: -60,
        textAnchor: "start",
        fontSize: 9,
      }),
      ...symbolKey({ entries: series, anchor: "bottom-left" }),
    ],
  });
}

function ruleXBetween({ x, low, high }: { x: number; low: number; high: number }) {
  return areaY([x - 0.9, x + 0.9], { x: (at) => at, y1: low, y2: high, fill: "#bdbdbd" });
}
