import { estimateWeight, idealWeight } from "@steelyard/core/body";
import { centimetres, formatNumber, millimetres } from "@steelyard/core/units";
import { createFlow } from "../drawing/flow.ts";
import type { Box, Item } from "../drawing/item.ts";
import { faint, hairline, ink, shade } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, polyline, strokes } from "../drawing/shapes.ts";
import type { StripChart } from "./strip-chart.ts";
import type { StripInput } from "./strip-input.ts";

/** The panel before the chart: what its lines and tints mean, and an example read off the model. Reaches 105 mm at most. */
export function drawLegend(input: StripInput, chart: StripChart, box: Box): readonly Item[] {
  const { typefaces, messages } = input;
  const { legend, legendTitle, kilograms } = messages.strip;
  const flow = createFlow(typefaces, box);
  flow.paragraph(legendTitle, { font: "bold", sizePt: 12, role: "H2" });
  flow.space(2);
  const sampleMm = 34;
  const row = (draw: (y: number) => readonly Item[], text: string): void => {
    flow.put((yMm) => {
      const own = createFlow(typefaces, {
        xMm: box.xMm + sampleMm + 5,
        yMm,
        widthMm: box.widthMm - sampleMm - 5,
      });
      own.paragraph(text, { sizePt: 11 });
      const heightMm = Math.max(own.yMm - yMm, 7) + 4;
      return { items: [group(draw(yMm + 2.6), { role: "Figure", alt: "" }), ...own.items], heightMm };
    });
  };
  const x = box.xMm;
  const across = (y: number, stroke: Parameters<typeof line>[2], text?: Item): Item[] =>
    text === undefined
      ? [line([x, y], [x + sampleMm, y], stroke)]
      : [line([x, y], [x + 11, y], stroke), text, line([x + 23, y], [x + sampleMm, y], stroke)];
  const middle = (text: string, y: number, look: { sizePt: number; font?: "bold" }): Item =>
    setText(typefaces, text, [x + 17, y], { anchor: "middle", ...look });
  row(
    (y) => [
      ...across(
        y,
        { colour: ink, widthMm: 0.42 },
        middle(kilograms("15"), y + 0.95, { sizePt: 7.5, font: "bold" }),
      ),
      ...across(y + 3.4, { colour: ink, widthMm: 0.15 }, middle("15.5", y + 4.1, { sizePt: 6 })),
    ],
    legend.contour,
  );
  row(
    (y) => [
      line([x, y - 1.4], [x + sampleMm, y - 1.4], strokes.plain),
      ...[4, 15, 26].flatMap((dx, i): Item[] => [
        line([x + dx, y - 1.4], [x + dx - 1.2, y + 4.6], { colour: hairline, widthMm: 0.15 }),
        setText(typefaces, String(150 + i * 10), [x + dx + 1, y + 1.6], { sizePt: 6.5 }),
      ]),
    ],
    legend.arm,
  );
  row((y) => across(y, { colour: ink, widthMm: 0.7, dashMm: [2.4, 1.2] }), legend.ideal);
  row(
    (y) => [
      { kind: "rectangle", xMm: x, yMm: y - 2, widthMm: sampleMm, heightMm: 6, fill: shade },
      polyline(
        [
          [x + sampleMm, y - 2],
          [x + sampleMm, y + 4],
        ],
        { stroke: { colour: ink, widthMm: 0.3, dashMm: [0.3, 0.9], cap: "round" } },
      ),
    ],
    legend.beyond,
  );
  const sample = chart.margin.find(({ lengthCm }) => lengthCm === 110);
  row(
    (y) =>
      sample === undefined
        ? []
        : [
            setText(
              typefaces,
              `110   ${formatNumber(Math.round(sample.idealKg * 10) / 10)}   ${messages.strip.range({
                below: formatNumber(Math.round((1 - sample.low95) * 100)),
                above: formatNumber(Math.round((sample.high95 - 1) * 100)),
              })}`,
              [x, y + 1],
              { sizePt: 8, font: "bold" },
            ),
          ],
    legend.margin,
  );
  flow.put((yMm) => ({
    items: [line([x, yMm], [x + box.widthMm, yMm], { colour: faint, widthMm: 0.2 })],
    heightMm: 2.5,
  }));
  flow.paragraph(exampleOf(input, chart), { sizePt: 12, font: "bold" });
  return flow.items;
}

const exampleCm = 110;
const exampleMm = 170;

/** One child through the model and over the chart, so that staff can check their reading. */
function exampleOf({ messages, site, model }: StripInput, { contours }: StripChart): string {
  const options = { ...(site === undefined ? {} : { site }), ...(model === undefined ? {} : { model }) };
  const lengthCm = centimetres(exampleCm);
  const estimate = estimateWeight({ lengthCm, armMm: millimetres(exampleMm) }, options);
  const ideal = idealWeight({ lengthCm });
  if (!estimate.ok || !ideal.ok) {
    throw new RangeError(
      `Cannot write the example as ${exampleCm} cm and ${exampleMm} mm must have a weight`,
    );
  }
  const { totalKg, low95Kg, high95Kg } = estimate.value;
  const nearest = contours.reduce(
    (best, { kg }) => (Math.abs(kg - totalKg) < Math.abs(best - totalKg) ? kg : best),
    0,
  );
  const tenth = (kg: number): string => formatNumber(Math.round(kg * 10) / 10, messages.language.numbers);
  return messages.strip.example({
    lengthCm: formatNumber(exampleCm, messages.language.numbers),
    armMm: formatNumber(exampleMm, messages.language.numbers),
    lineKg: formatNumber(nearest, messages.language.numbers),
    low: tenth(low95Kg),
    high: tenth(high95Kg),
    idealKg: tenth(ideal.value),
  });
}
