import type { Box, Group, Item, Path, Point, Stroke } from "../drawing/item.ts";
import { faint, hairline, ink, shade, tint } from "../drawing/palette.ts";
import { group, line, polyline } from "../drawing/shapes.ts";
import type { StripMessages } from "../messages/strip-messages.ts";
import { curvePath, type Stretch } from "./curve-path.ts";
import { armScalesCm } from "./label-chart.ts";
import type { Label } from "./place-labels.ts";
import { stretchesBetween } from "./stretches-between.ts";
import type { StripChart } from "./strip-chart.ts";
import type { StripLayout, StripPage } from "./strip-layout.ts";
import type { Curve } from "./trace-contours.ts";
import { shortestCm } from "./weight-surface.ts";

const strongLine: Stroke = { colour: ink, widthMm: 0.42 };
const weakLine: Stroke = { colour: ink, widthMm: 0.15 };
const idealLine: Stroke = { colour: ink, widthMm: 0.7, dashMm: [2.4, 1.2] };
const armLine: Stroke = { colour: hairline, widthMm: 0.12 };
const armFifty: Stroke = { colour: faint, widthMm: 0.18 };
const lengthLine: Stroke = { colour: hairline, widthMm: 0.1 };
const lengthFive: Stroke = { colour: faint, widthMm: 0.15 };
const lengthTen: Stroke = { colour: ink, widthMm: 0.25 };
const fittedEdge: Stroke = { colour: ink, widthMm: 0.3, dashMm: [0.3, 0.9], cap: "round" };

interface ChartOnPage {
  readonly chart: StripChart;
  readonly layout: StripLayout;
  readonly page: StripPage;
  readonly messages: StripMessages;
}

/** The part of the chart that lies on a page: tints, scales, contours and their labels. */
export function drawChart(given: ChartOnPage): Group {
  const { chart, layout, page, messages } = given;
  const place = ({ lengthCm, across }: { lengthCm: number; across: number }): Point => [
    layout.chartLeftMm + across * chart.widthMm,
    layout.topMm + (lengthCm - page.fromCm) * 10,
  ];
  const within: Stretch = { fromCm: Math.max(page.fromCm, shortestCm), toCm: page.drawnToCm };
  const [left, top] = place({ lengthCm: within.fromCm, across: 0 });
  const clip: Box = {
    xMm: left,
    yMm: top,
    widthMm: chart.widthMm,
    heightMm: (within.toCm - within.fromCm) * 10,
  };
  // Past the join there are lines to match and no figures: the next page is glued over them.
  const own = chart.labels.filter(({ text }) => text.at[1] / 10 > page.fromCm && text.at[1] / 10 < page.toCm);
  const draw = (curves: readonly Curve[], stroke: Stroke): Path => {
    const segments = curves.flatMap((curve) => {
      const stretches = stretchesBetween({ curve, labels: own, widthMm: chart.widthMm, within });
      return curvePath({ curve, stretches, place });
    });
    return { kind: "path", segments, stroke };
  };
  const items: Item[] = [
    ...drawTints(chart, within, place),
    draw(
      chart.armLines.filter(({ armMm }) => armMm % 50 !== 0),
      armLine,
    ),
    draw(
      chart.armLines.filter(({ armMm }) => armMm % 50 === 0),
      armFifty,
    ),
    ...drawLengthLines(within, place, own, layout),
    draw([chart.fittedLow, chart.fittedHigh], fittedEdge),
    draw(
      chart.contours.filter(({ strong }) => !strong),
      weakLine,
    ),
    draw(
      chart.contours.filter(({ strong }) => strong),
      strongLine,
    ),
    draw([chart.ideal], idealLine),
    ...own.map(({ text }) => ({
      ...text,
      at: [layout.chartLeftMm + text.at[0], layout.topMm + text.at[1] - page.fromCm * 10] as Point,
    })),
  ];
  return group(items, {
    clip,
    role: "Figure",
    alt: messages.chartAlt({ fromCm: within.fromCm, toCm: page.toCm }),
  });
}

/** Where the model extrapolates: arms beyond the fit at either side, lengths under 50 cm. */
function drawTints(
  chart: StripChart,
  within: Stretch,
  place: (at: { lengthCm: number; across: number }) => Point,
): readonly Item[] {
  const { fromCm, toCm } = within;
  const side = (curve: Curve, edge: 0 | 1): Path => {
    const segments = curvePath({ curve, stretches: [within], place });
    const end = place({ lengthCm: toCm, across: edge });
    const start = place({ lengthCm: fromCm, across: edge });
    return { kind: "path", segments: [...segments, ["L", ...end], ["L", ...start], ["Z"]], fill: shade };
  };
  const shortEndCm = Math.min(toCm, fittedFromCm);
  const short =
    fromCm < shortEndCm
      ? [
          polyline(
            [
              place({ lengthCm: fromCm, across: 0 }),
              place({ lengthCm: fromCm, across: 1 }),
              place({ lengthCm: shortEndCm, across: 1 }),
              place({ lengthCm: shortEndCm, across: 0 }),
            ],
            { closed: true, fill: tint },
          ),
        ]
      : [];
  return [...short, side(chart.fittedLow, 0), side(chart.fittedHigh, 1)];
}

/** Under this length the estimate is an extrapolation; the model's own limit. */
const fittedFromCm = 50;

function drawLengthLines(
  { fromCm, toCm }: Stretch,
  place: (at: { lengthCm: number; across: number }) => Point,
  labels: readonly Label[],
  layout: StripLayout,
): readonly Item[] {
  const items: Item[] = [];
  for (let cm = Math.ceil(fromCm); cm <= Math.floor(toCm); cm += 1) {
    const stroke = cm % 10 === 0 ? lengthTen : cm % 5 === 0 ? lengthFive : lengthLine;
    items.push(line(place({ lengthCm: cm, across: 0 }), place({ lengthCm: cm, across: 1 }), stroke));
  }
  // Ticks that hang from the scale to the figures under it.
  for (const scaleCm of armScalesCm.filter((cm) => cm >= fromCm && cm < toCm - 0.5)) {
    for (const { text } of labels) {
      const isFigure = Math.abs(text.at[1] - (scaleCm * 10 + 3)) < 1e-6 && text.anchor === "middle";
      if (!isFigure) continue;
      const x = layout.chartLeftMm + text.at[0];
      const [, y] = place({ lengthCm: scaleCm, across: 0 });
      items.push(line([x, y], [x, y + 0.9], lengthTen));
    }
  }
  return items;
}
