import { ok, type Result } from "@steelyard/core/result";
import { formatNumber } from "@steelyard/core/units";
import type { Box, Drawing, Item, Page } from "../drawing/item.ts";
import { drawWatermark } from "../frame/frame-page.ts";
import { drawFootBand, drawHeadBand } from "./draw-bands.ts";
import { drawChart } from "./draw-chart.ts";
import { drawHowTo } from "./draw-how-to.ts";
import { drawLegend } from "./draw-legend.ts";
import { drawLengthRuler } from "./draw-length-ruler.ts";
import { drawMargin } from "./draw-margin.ts";
import { drawSideBlock } from "./draw-side.ts";
import { createStripChart, type StripChart } from "./strip-chart.ts";
import type { StripInput } from "./strip-input.ts";
import { layOutRoll, layOutSheets, type StripLayout, showsChart, type TooNarrow } from "./strip-layout.ts";

/**
 * The length strip from the head line to 200 cm at 1:1.
 *
 * Along it centimetres; from 45 cm on, across it the arm, over both the lines of equal total weight that the body model
 * gives for unknown sex and the given site, the line of ideal weight, tints where the model extrapolates, and a margin with
 * ideal weight and 95 % range for each centimetre. The nearest line is within 2 % of the model everywhere.
 * Fails with `too-narrow` where the lines could not be told apart.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawStrip, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const imprint = await createImprint({
 *   paper: "strip",
 *   choices: {},
 *   softwareVersion: "0.1.0",
 *   modelVersion: defaultBodyModel().version,
 *   madeOn: "2026-11-25",
 *   expiresOn: "2027-11-25",
 *   sha256: (text) => createHash("sha256").update(text).digest("hex"),
 * });
 * assert.ok(imprint.ok);
 * const context = { typefaces, messages: ENGLISH_PAPER, imprint: imprint.value };
 * const strip = drawStrip({ ...context, medium: { sheet: pageSizes.a4 } });
 * assert.ok(strip.ok && strip.value.pages.length === 8);
 * assert.equal(drawStrip({ ...context, medium: { rollWidthMm: 150 } }).ok, false);
 * ```
 */
export function drawStrip(input: StripInput): Result<Drawing, TooNarrow> {
  const { medium, typefaces, messages, site, model } = input;
  const layout = "sheet" in medium ? layOutSheets(medium.sheet) : layOutRoll(medium);
  if (!layout.ok) return layout;
  const { chartWidthMm: widthMm, joinsCm, pages } = layout.value;
  const chart = createStripChart({ typefaces, messages, widthMm, site, model, joinsCm });
  return ok({
    title: messages.strip.title,
    language: messages.language.tag,
    pages: pages.map((_, index) => drawPage({ ...input, layout: layout.value, chart, index })),
  });
}

interface StripPageInput extends StripInput {
  readonly layout: StripLayout;
  readonly chart: StripChart;
  readonly index: number;
}

function drawPage(given: StripPageInput): Page {
  const { layout, chart, index, messages, typefaces } = given;
  const page = layout.pages[index];
  if (page === undefined) throw new RangeError(`Cannot draw page ${index} as the strip has none`);
  const items: Item[] = [...drawWatermarks(given), ...drawHeadBand(given, { layout, index })];
  items.push(...drawLeadIn(given));
  if (showsChart(page)) {
    items.push(drawChart({ chart, layout, page, messages: messages.strip }));
    items.push(...drawMargin({ ...given, page }));
  }
  items.push(...drawLengthRuler({ layout, page, typefaces }));
  items.push(...drawSide(given), ...drawFootBand(given, { layout, index }));
  return { widthMm: layout.widthMm, heightMm: layout.heightMm, label: String(index + 1), items };
}

/** How far the panel of instructions reaches, and how much the legend needs, mm. */
const howToMm = 215;
const legendMm = 105;

function drawLeadIn(given: StripPageInput): readonly Item[] {
  const { layout, chart, index } = given;
  const { chartLeftMm, rightMm, topMm, pages } = layout;
  const box: Box = {
    xMm: chartLeftMm + 5,
    yMm: topMm + 6,
    widthMm: Math.min(rightMm - chartLeftMm - 5, 200),
    heightMm: howToMm,
  };
  const firstEndMm = (pages[0]?.toCm ?? 0) * 10;
  const legendOnFirst = firstEndMm >= howToMm + legendMm + 10;
  const legendAt = legendOnFirst ? howToMm + 12 : 8;
  const legendBox = { ...box, yMm: topMm + legendAt, heightMm: legendMm };
  return [
    ...(index === 0 ? drawHowTo(given, layout, box) : []),
    ...(index === (legendOnFirst ? 0 : 1) ? drawLegend(given, chart, legendBox) : []),
  ];
}

/** The side block once on a sheet, on a roll again and again. */
function drawSide(given: StripPageInput): readonly Item[] {
  const { layout, index, messages } = given;
  const page = layout.pages[index] as StripLayout["pages"][number];
  const lengthMm = (page.toCm - page.fromCm) * 10;
  const { unreviewed } = messages.language;
  const heading = `${messages.strip.title}. ${messages.strip.section({
    page: index + 1,
    pages: layout.pages.length,
    fromCm: formatNumber(page.fromCm, messages.language.numbers),
    toCm: formatNumber(page.toCm, messages.language.numbers),
  })}${unreviewed === undefined ? "" : `. ${unreviewed}`}`;
  const blocks = lengthMm > 1000 ? Math.round(lengthMm / 250) : 1;
  return Array.from({ length: blocks }, (_, i) => {
    const blockMm = layout.topMm + (i * lengthMm) / blocks;
    return drawSideBlock(given, {
      layout,
      topMm: blockMm + 5,
      bottomMm: blockMm + lengthMm / blocks - 6,
      heading,
    });
  }).flat();
}

/** One watermark on a sheet, on a roll one every 25 cm. */
function drawWatermarks(given: StripPageInput): readonly Item[] {
  const { layout, index } = given;
  const page = layout.pages[index] as StripLayout["pages"][number];
  const lengthMm = (page.toCm - page.fromCm) * 10;
  const count = Math.max(1, Math.round(lengthMm / 250));
  const stepMm = lengthMm / count;
  return Array.from({ length: count }, (_, i) =>
    drawWatermark(given, {
      xMm: layout.chartLeftMm,
      yMm: layout.topMm + i * stepMm,
      widthMm: layout.rightMm - layout.chartLeftMm,
      heightMm: stepMm,
    }),
  ).flat();
}
