import { dot, line, ruleY, text } from "@observablehq/plot";
import { measureErrors } from "../../accuracy.ts";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { proposedMinimum } from "../published-classes.ts";
import { below, beside } from "./axis-label.ts";
import { inBand, lengthBands } from "./length-bands.ts";
import { type Shape, symbolKey } from "./symbol-key.ts";

const series: readonly (Shape & { readonly name: string })[] = [
  { name: "length + arm + sex + waist", symbol: "diamond", fill: "white" },
  { name: "length + arm + sex", symbol: "circle", fill: "black" },
  { name: "length + arm", symbol: "triangle", fill: "white" },
  { name: "length", symbol: "square", fill: "grey" },
];
const panels = [
  { key: "pw10", name: "within 10 % of the scale", least: proposedMinimum.within10 },
  { key: "pw20", name: "within 20 % of the scale", least: proposedMinimum.within20 },
] as const;
/** A share of fewer children says little. */
const fewest = 50;

/** Share of children within 10 % and 20 % by length, for four sets of measurements. */
export function drawWithinByLength({ nhanes }: AccuracyResults): string {
  const bands = lengthBands({ from: 50, to: 200, step: 10 });
  const points = series.flatMap(({ name }) =>
    bands.flatMap((band) => {
      const rows = inBand(nhanes.get(name) ?? [], band);
      if (rows.length < fewest) return [];
      const errors = measureErrors(rows);
      return panels.map((panel) => ({ name, panel: panel.name, x: band.middle, share: errors[panel.key] }));
    }),
  );
  const counts = bands.map((band) => ({
    x: band.middle,
    n: String(inBand(nhanes.get("length + arm") ?? [], band).length),
  }));
  const [first] = panels;
  return drawSvg({
    title: "Share of children within 10 and 20 % of the scale weight, by length",
    width: 760,
    height: 760,
    marginRight: 24,
    marginTop: 44,
    marginLeft: 56,
    marginBottom: 44,
    x: {
      domain: [48, 200],
      ...below,
      label: "lying length, cm (bands of 10 cm)",
      ticks: bands.map(({ low }) => low),
    },
    y: { domain: [0, 100], ...beside, label: "children, %", grid: true },
    fy: { label: null, domain: panels.map(({ name }) => name), axis: null },
    marks: [
      text(panels, { fy: "name", text: "name", frameAnchor: "top-left", dy: -30, fontWeight: "bold" }),
      text(counts, { x: "x", text: "n", frameAnchor: "top", dy: -12, fontSize: 9 }),
      text(["n"], { frameAnchor: "top-left", dx: -6, dy: -12, fontSize: 9 }),
      ruleY(panels, { fy: "name", y: "least", strokeDasharray: "5 4" }),
      line(points, { fy: "panel", x: "x", y: "share", z: "name", strokeWidth: 1 }),
      ...series.map(({ name, symbol, fill }) =>
        dot(
          points.filter((point) => point.name === name),
          { fy: "panel", x: "x", y: "share", symbol, fill, stroke: "black", r: 4 },
        ),
      ),
      ...symbolKey({ entries: series, anchor: "bottom-left", facet: { fy: [first.name] } }),
    ],
  });
}
