import { defaultBodyModel, idealWeight } from "@steelyard/core/body";
import { type Centimetres, centimetres, formatNumber, millimetres } from "@steelyard/core/units";
import type { Box, Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { contentBox } from "../frame/frame-page.ts";
import { drawTable, type TableRow } from "./draw-table.ts";
import { gridCell, writeCell } from "./grid-cell.ts";
import type { WeightGridInput } from "./weight-grid-input.ts";

const keyMm = 9;
const gapMm = 5;
const stepCm = 5;
/** Blocks a page across and down. */
const across = 2;
const down = 3;
/** Most columns and rows a block has room for. */
const mostColumns = 20;
const mostRows = 17;

/** For every 5 cm of length where the model knows the waist, a block of arm by waist; six blocks a page. */
export function drawWaistPages(input: WeightGridInput): readonly { range: string; items: readonly Item[] }[] {
  const { messages, size, typefaces } = input;
  const { grid } = messages;
  const { byLength } = defaultBodyModel();
  const lengths: number[] = [];
  for (let cm = 50; cm <= 200; cm += stepCm) if (byLength.covers("waist", cm)) lengths.push(cm);
  const box = contentBox(size);
  const widthMm = (box.widthMm - (across - 1) * gapMm) / across;
  const heightMm = (box.heightMm - keyMm - (down - 1) * gapMm) / down;
  const perPage = across * down;
  return Array.from({ length: Math.ceil(lengths.length / perPage) }, (_, page) => {
    const own = lengths.slice(page * perPage, (page + 1) * perPage);
    const items = own.flatMap((cm, i) =>
      drawBlock(input, centimetres(cm), {
        xMm: box.xMm + (i % across) * (widthMm + gapMm),
        yMm: box.yMm + Math.floor(i / across) * (heightMm + gapMm),
        widthMm,
        heightMm,
      }),
    );
    const key = setParagraph(typefaces, grid.keyWithWaist, {
      at: [box.xMm, box.yMm + box.heightMm - keyMm + 1.5],
      widthMm: box.widthMm,
      sizePt: 7.5,
    });
    const range = grid.range({
      fromCm: formatNumber(own[0] ?? 0, messages.language.numbers),
      toCm: formatNumber(own.at(-1) ?? 0, messages.language.numbers),
    });
    return { range, items: [...items, key.group] };
  });
}

function drawBlock(input: WeightGridInput, lengthCm: Centimetres, box: Box): readonly Item[] {
  const { typefaces, messages, site } = input;
  const { grid } = messages;
  const options = site === undefined ? {} : { site };
  const ideal = idealWeight({ lengthCm });
  if (!ideal.ok)
    throw new RangeError(`Cannot draw a block as there must be an ideal weight at ${lengthCm} cm`);
  const arms = evenly({ ...usual("arm", lengthCm), most: mostRows, steps: [10, 20] });
  const waists = evenly({ ...usual("waist", lengthCm), most: mostColumns, steps: [2, 4, 5, 10] });
  const rows = arms.map(
    (arm): TableRow => ({
      heads: [formatNumber(arm, messages.language.numbers)],
      idealKg: ideal.value,
      cells: waists.map((waist) =>
        gridCell({ lengthCm, armMm: millimetres(arm), waistCm: centimetres(waist) }, options),
      ),
    }),
  );
  const top = box.yMm + 8.5;
  const rowMm = (box.heightMm - 8.5) / Math.max(rows.length + 1, 12);
  const title = `${grid.blockLength({ lengthCm: formatNumber(lengthCm, messages.language.numbers) })}`;
  const names = { sizePt: 6, colour: soft } as const;
  return [
    setText(typefaces, title, [box.xMm, box.yMm + 4.4], { font: "bold", sizePt: 12 }),
    setText(
      typefaces,
      grid.blockIdeal({ kg: writeCell(ideal.value, messages.language.numbers) }),
      [box.xMm + box.widthMm, box.yMm + 4.4],
      {
        sizePt: 9,
        anchor: "end",
      },
    ),
    setText(typefaces, grid.waist, [box.xMm + 13, box.yMm + 7.8], names),
    setText(typefaces, messages.strip.armScale, [box.xMm + 10, top + rowMm / 2 + 0.7], {
      ...names,
      anchor: "end",
    }),
    drawTable({
      typefaces,
      box: { ...box, yMm: top },
      alt: grid.alt,
      numbers: messages.language.numbers,
      columnHeads: waists.map((waist) => formatNumber(waist, messages.language.numbers)),
      rows,
      headMm: 12,
      rowMm,
      sizePt: waists.length > 17 ? 5.4 : 6,
      ruleEvery: 5,
    }),
  ];
}

/** The girths of 998 of 1,000 children of either sex at this length; arm in mm, waist in cm. */
function usual(girth: "arm" | "waist", lengthCm: number): { readonly low: number; readonly high: number } {
  const { byLength } = defaultBodyModel();
  const fitted = (["m", "f"] as const).map((sex) => byLength.at(sex, lengthCm).fitted(girth));
  const high = Math.max(...fitted.map((own) => own.high));
  return {
    low: Math.min(...fitted.map((own) => own.low)),
    // The thickest tapes of the data; past them the curves run on.
    high: Math.min(high, girth === "arm" ? 480 : 150),
  };
}

/** Round values over a range, as close together as there is room for. */
function evenly(given: {
  low: number;
  high: number;
  most: number;
  steps: readonly number[];
}): readonly number[] {
  const { low, high, most, steps } = given;
  const last = steps.at(-1) ?? 1;
  const fits = (step: number): boolean => Math.floor(high / step) - Math.ceil(low / step) + 1 <= most;
  let step = steps.find(fits) ?? last;
  while (!fits(step)) step += last;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step);
}
