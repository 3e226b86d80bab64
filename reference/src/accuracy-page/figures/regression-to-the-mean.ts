import { dot, line, ruleY, text } from "@observablehq/plot";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { groupByZ } from "../group-by-z.ts";
import { type Way, ways } from "../regression-to-the-mean.ts";
import { below, beside } from "./axis-label.ts";
import { type Shape, symbolKey } from "./symbol-key.ts";

const series: readonly (Shape & { readonly way: Way })[] = [
  { way: "length", symbol: "square", fill: "grey" },
  { way: "arm", symbol: "circle", fill: "black" },
  { way: "exact", symbol: "diamond", fill: "white" },
];
const groupings = [
  { by: "trueZ", name: "grouped by the true weight" },
  { by: "estimateZ", name: "grouped by the estimate" },
] as const;
const fewest = 15;

/** Mean error by weight for length, the children grouped by their true weight and by the estimate. */
export function drawRegressionToTheMean({ placed }: AccuracyResults): string {
  const points = placed.flatMap(({ name, ways: own }) =>
    groupings.flatMap((grouping) =>
      series.flatMap(({ way }) =>
        groupByZ(own[way], grouping.by)
          .filter(({ n }) => n >= fewest)
          .map((group) => ({ ...group, way, population: name, grouping: grouping.name })),
      ),
    ),
  );
  const [byTruth, byEstimate] = groupings;
  return drawSvg({
    title: "Mean percentage error by weight for length",
    width: 760,
    height: 660,
    marginTop: 44,
    marginLeft: 56,
    marginBottom: 66,
    x: {
      type: "point",
      ...below,
      labelOffset: 58,
      label: "z of weight for length, WHO 2006",
      tickRotate: -30,
      domain: groupByZ([], "trueZ").map(({ name }) => name),
    },
    y: { domain: [-35, 50], ...beside, label: "mean of (estimate - scale) / scale, %", grid: true, ticks: 7 },
    fx: { label: null, axis: null, domain: groupings.map(({ name }) => name), padding: 0.08 },
    fy: { label: null, axis: null, domain: placed.map(({ name }) => name), padding: 0.16 },
    marks: [
      ruleY([0]),
      line(points, { fx: "grouping", fy: "population", x: "name", y: "meanError", z: "way", strokeWidth: 1 }),
      ...series.map(({ way, symbol, fill }) =>
        dot(
          points.filter((point) => point.way === way),
          {
            fx: "grouping",
            fy: "population",
            x: "name",
            y: "meanError",
            symbol,
            fill,
            stroke: "black",
            r: 4,
          },
        ),
      ),
      text(groupings, {
        fx: "name",
        fy: () => placed[0]?.name,
        text: "name",
        frameAnchor: "top",
        dy: -32,
        fontWeight: "bold",
      }),
      text(placed, {
        fx: () => byTruth.name,
        fy: "name",
        text: "name",
        frameAnchor: "top-left",
        dy: -14,
        fontWeight: "bold",
      }),
      ...symbolKey({
        entries: series.map((shape) => ({ ...shape, name: ways[shape.way] })),
        anchor: "top-left",
        facet: { fx: [byEstimate.name], fy: [placed[0]?.name ?? ""] },
      }),
    ],
  });
}
