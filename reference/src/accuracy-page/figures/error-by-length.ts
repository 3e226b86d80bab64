import { areaY, line, ruleY, text } from "@observablehq/plot";
import { percentError } from "../../accuracy.ts";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { quantileOf } from "../quantile-of.ts";
import { below, beside } from "./axis-label.ts";
import { inBand, lengthBands } from "./length-bands.ts";
import { withCommas } from "./with-commas.ts";

const sets = ["length", "length + arm + sex"] as const;
const ribbons = [
  { low: 0.025, high: 0.975, fill: "#e2e2e2" },
  { low: 0.1, high: 0.9, fill: "#c0c0c0" },
  { low: 0.25, high: 0.75, fill: "#8f8f8f" },
] as const;
/** Children a band must have for its outermost quantiles to mean something. */
const fewest = 80;

/** Quantiles of the percentage error against length. */
export function drawErrorByLength({ nhanes }: AccuracyResults): string {
  const points = sets.flatMap((set) =>
    lengthBands({ from: 50, to: 200, step: 5 }).flatMap((band) => {
      const errors = inBand(nhanes.get(set) ?? [], band).map(percentError);
      if (errors.length < fewest) return [];
      return [{ set: nameOf(set, nhanes), x: band.middle, at: (share: number) => quantileOf(errors, share) }];
    }),
  );
  return drawSvg({
    title: "Percentage error of the estimate against length",
    width: 760,
    height: 640,
    marginTop: 28,
    marginLeft: 56,
    marginBottom: 44,
    x: { domain: [50, 200], ...below, label: "lying length, cm (bands of 5 cm)" },
    y: { domain: [-50, 50], ...beside, label: "(estimate - scale) / scale, %", ticks: 10 },
    fy: { label: null, axis: null, domain: sets.map((set) => nameOf(set, nhanes)) },
    marks: [
      ...ribbons.map(({ low, high, fill }) =>
        areaY(points, {
          fy: "set",
          x: "x",
          y1: (point) => point.at(low),
          y2: (point) => point.at(high),
          fill,
          clip: true,
        }),
      ),
      ruleY([-20, -10, 10, 20], { strokeDasharray: "4 4", strokeWidth: 0.7 }),
      ruleY([0], { strokeWidth: 0.7 }),
      line(points, { fy: "set", x: "x", y: (point) => point.at(0.5), strokeWidth: 2 }),
      text(["shades: the middle 50, 80 and 95 % of children; line: the median"], {
        fy: () => nameOf(sets[1], nhanes),
        frameAnchor: "bottom-left",
        dx: 8,
        dy: -8,
      }),
      text(
        sets.map((set) => nameOf(set, nhanes)),
        { fy: (name) => name, text: (name) => name, frameAnchor: "top-left", dy: -16, fontWeight: "bold" },
      ),
    ],
  });
}

function nameOf(set: string, nhanes: AccuracyResults["nhanes"]): string {
  return `${set} (n = ${withCommas(nhanes.get(set)?.length ?? 0)})`;
}
