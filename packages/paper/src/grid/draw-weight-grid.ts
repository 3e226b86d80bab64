import { idealWeight } from "@steelyard/core/body";
import { centimetres, formatNumber, millimetres } from "@steelyard/core/units";
import type { Drawing, Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawTable, type TableRow } from "./draw-table.ts";
import { drawWaistPages } from "./draw-waist-pages.ts";
import { gridCell, writeCell } from "./grid-cell.ts";
import { type GridRange, gridRanges } from "./grid-pages.ts";
import type { WeightGridInput } from "./weight-grid-input.ts";

/**
 * The weight grid: total weight in kg for every centimetre of length and arms 5 or 10 mm apart, with the ideal weight; or, by
 * arm and waist, a block for every 5 cm.
 *
 * Each cell is the model's estimate for exactly those measurements, sex unknown, at the site.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawWeightGrid, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
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
 * const grid = drawWeightGrid({ ...context, size: pageSizes.a4, girths: "arm" });
 * assert.equal(grid.pages.length, 4);
 * ```
 */
export function drawWeightGrid(input: WeightGridInput): Drawing {
  const { size, messages, girths } = input;
  const { grid } = messages;
  const drawn =
    girths === "arm"
      ? gridRanges.map((range) => ({ range: rangeOf(input, range), items: drawRange(input, range) }))
      : drawWaistPages(input);
  const pages = drawn.map(({ range, items }, i) =>
    framePage(input, {
      size,
      title: `${grid.title}, ${range}`,
      subtitle: girths === "arm" ? grid.subtitle : grid.subtitleWithWaist,
      page: i + 1,
      pages: drawn.length,
      items,
    }),
  );
  return { title: grid.title, language: messages.language.tag, pages };
}

function rangeOf({ messages }: SheetContext, { fromCm, toCm }: GridRange): string {
  return messages.grid.range({
    fromCm: formatNumber(fromCm, messages.language.numbers),
    toCm: formatNumber(toCm, messages.language.numbers),
  });
}

const keyMm = 9;

function drawRange(input: WeightGridInput, range: GridRange): readonly Item[] {
  const { typefaces, messages, size, site } = input;
  const { grid } = messages;
  const options = site === undefined ? {} : { site };
  const box = contentBox(size);
  const { fromCm, toCm, armFromMm, armToMm, armStepMm } = range;
  const arms = Array.from(
    { length: (armToMm - armFromMm) / armStepMm + 1 },
    (_, j) => armFromMm + j * armStepMm,
  );
  const rows = Array.from({ length: toCm - fromCm + 1 }, (_, i): TableRow => {
    const lengthCm = centimetres(fromCm + i);
    const ideal = idealWeight({ lengthCm });
    if (!ideal.ok)
      throw new RangeError(`Cannot draw the grid as there must be an ideal weight at ${lengthCm} cm`);
    return {
      heads: [
        formatNumber(lengthCm, messages.language.numbers),
        writeCell(ideal.value, messages.language.numbers),
      ],
      idealKg: ideal.value,
      cells: arms.map((arm) => gridCell({ lengthCm, armMm: millimetres(arm) }, options)),
    };
  });
  const headMm = 10;
  const namesMm = 4;
  const tableBox = {
    ...box,
    yMm: box.yMm + namesMm,
    heightMm: box.heightMm - namesMm - keyMm,
  };
  const rowMm = tableBox.heightMm / (40 + 1);
  const names = { sizePt: 6.5, colour: soft } as const;
  const key = setParagraph(typefaces, grid.key, {
    at: [box.xMm, box.yMm + box.heightMm - keyMm + 1.5],
    widthMm: box.widthMm,
    sizePt: 7.5,
  });
  return [
    setText(typefaces, grid.length, [box.xMm, box.yMm + 2.6], names),
    setText(typefaces, grid.arm, [box.xMm + 2 * headMm + 2, box.yMm + 2.6], names),
    setText(typefaces, grid.ideal, [box.xMm + 2 * headMm - 1.5, box.yMm + namesMm + rowMm / 2 + 0.8], {
      ...names,
      anchor: "end",
    }),
    drawTable({
      typefaces,
      box: tableBox,
      alt: grid.alt,
      numbers: messages.language.numbers,
      columnHeads: arms.map((arm) => formatNumber(arm, messages.language.numbers)),
      rows,
      headMm,
      rowMm,
      sizePt: Math.min(7.5, 6.2 * (size.widthMm / 210)),
      ruleEvery: 5,
    }),
    key.group,
  ];
}
