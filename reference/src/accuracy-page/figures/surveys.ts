import { dot, link, ruleX, text } from "@observablehq/plot";
import { type Errors, measureErrors } from "../../accuracy.ts";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { proposedMinimum } from "../published-classes.ts";
import { below } from "./axis-label.ts";
import { type Shape, symbolKey } from "./symbol-key.ts";
import { withCommas } from "./with-commas.ts";

type Key = "meanError" | "pw10";

const series: readonly (Shape & { readonly name: string })[] = [
  { name: "length", symbol: "square", fill: "grey" },
  { name: "length + arm", symbol: "circle", fill: "white" },
  {
    name: "length + arm, after calibration by 100 of the survey's children",
    symbol: "circle",
    fill: "black",
  },
];
const axes = {
  meanError: {
    title: "Mean percentage error on each open survey",
    label: "mean of (estimate - scale) / scale, %",
    domain: [-8, 16],
    rule: 0,
  },
  pw10: {
    title: "Share of children within 10 % on each open survey",
    label: "within 10 % of the scale, %",
    domain: [30, 100],
    rule: proposedMinimum.within10,
  },
} as const satisfies Record<Key, unknown>;

/** One figure of dots, a line per survey: the mean error, or the share within 10 %. */
export function drawSurveys({ surveys }: AccuracyResults, key: Key): string {
  const { title, label, domain, rule } = axes[key];
  const lines = surveys.map(({ dataset, sets, calibrated }) => {
    const of = (name: string): Errors | undefined => {
      const rows = sets.find(([own]) => own === name)?.[1] ?? [];
      return rows.length === 0 ? undefined : measureErrors(rows);
    };
    const arm = of("length + arm");
    return {
      name: `${dataset} (n = ${withCommas(arm?.children ?? 0)})`,
      values: [of("length")?.[key], arm?.[key], calibrated?.after[key]],
    };
  });
  const points = lines.flatMap(({ name, values }) =>
    values.flatMap((value, i) => (value === undefined ? [] : [{ name, value, series: series[i]?.name }])),
  );
  const spans = lines.map(({ name, values }) => {
    const known = values.filter((value) => value !== undefined);
    return { name, low: Math.min(...known), high: Math.max(...known) };
  });
  return drawSvg({
    title,
    width: 760,
    height: 140 + 32 * lines.length,
    marginTop: 88,
    marginLeft: 280,
    marginBottom: 44,
    marginRight: 16,
    x: { domain, ...below, label, grid: true },
    y: { type: "point", domain: lines.map(({ name }) => name), label: null },
    marks: [
      ruleX([rule], { strokeDasharray: "5 4" }),
      link(spans, { x1: "low", x2: "high", y1: "name", y2: "name", stroke: "#999" }),
      ...series.map(({ name, symbol, fill }) =>
        dot(
          points.filter((point) => point.series === name),
          { x: "value", y: "name", symbol, fill, stroke: "black", r: 5 },
        ),
      ),
      ...symbolKey({ entries: series, anchor: "top-left", abovePx: 52 }),
      text([title], { frameAnchor: "top-left", dx: -270, dy: -80, fontWeight: "bold", textAnchor: "start" }),
    ],
  });
}
