import { formatNumber, type NumberStyle } from "@steelyard/core/units";
import type { Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import type { StripChart } from "./strip-chart.ts";
import type { StripLayout, StripPage } from "./strip-layout.ts";
import type { MarginEntry } from "./weight-surface.ts";

/** Columns of the margin, mm from its left edge. */
const lengthAt = 6.5;
const idealAt = 15.5;
const rangeAt = 29;

/** For each centimetre the ideal weight and the two-sided 95 % range there, in a row that stands at that length. */
export function drawMargin(
  given: SheetContext & {
    readonly layout: StripLayout;
    readonly page: StripPage;
    readonly chart: StripChart;
  },
): readonly Item[] {
  const { layout, page, chart, typefaces, messages } = given;
  const left = layout.marginLeftMm;
  const yOf = (lengthCm: number): number => layout.topMm + (lengthCm - page.fromCm) * 10;
  const rows = chart.margin.filter(
    ({ lengthCm }) => lengthCm > page.fromCm - 0.01 && lengthCm < page.toCm - 0.2,
  );
  // The first row of a page stands under its join, where it is not cut through and clear of the crosses.
  const dropOf = (lengthCm: number): number => (Math.abs(lengthCm - page.fromCm) < 1e-6 ? 3.6 : 0);
  const drawn = rows.flatMap((entry) =>
    drawRow(given, entry, left, yOf(entry.lengthCm), dropOf(entry.lengthCm)),
  );
  // At every 10 cm, and at the top of a page that begins between them.
  const top = page.fromCm % 10 === 0 ? undefined : rows[1]?.lengthCm;
  const heads = rows.filter(({ lengthCm }) => lengthCm % 10 === 0 || lengthCm === top);
  const { marginLength, marginIdeal, marginRange } = messages.strip;
  const headings = heads.flatMap(({ lengthCm }): Item[] => {
    const y = yOf(lengthCm) + (dropOf(lengthCm) === 0 ? 4.6 : 6.8);
    if (lengthCm + 0.7 > page.toCm) return [];
    const look = { sizePt: 5.5, colour: soft, anchor: "end" } as const;
    return [
      setText(typefaces, marginLength, [left + lengthAt, y], look),
      setText(typefaces, marginIdeal, [left + idealAt, y], look),
      setText(typefaces, marginRange, [left + rangeAt, y], look),
    ];
  });
  return [group(headings, { role: "P" }), group(drawn, { role: "P" })];
}

function drawRow(
  { typefaces, messages }: SheetContext,
  { lengthCm, idealKg, low95, high95 }: MarginEntry,
  left: number,
  yMm: number,
  dropMm: number,
): readonly Item[] {
  const y = yMm + 0.95 + dropMm;
  const font = lengthCm % 5 === 0 ? "bold" : "regular";
  const range = messages.strip.range({
    below: formatNumber(Math.round((1 - low95) * 100), messages.language.numbers),
    above: formatNumber(Math.round((high95 - 1) * 100), messages.language.numbers),
  });
  return [
    line([left, yMm], [left + 1.5, yMm], strokes.thin),
    setText(typefaces, formatNumber(lengthCm, messages.language.numbers), [left + lengthAt, y], {
      sizePt: 7,
      anchor: "end",
      font,
    }),
    setText(typefaces, writeKg(idealKg, messages.language.numbers), [left + idealAt, y], {
      sizePt: 8,
      anchor: "end",
      font: "bold",
    }),
    setText(typefaces, range, [left + rangeAt, y], { sizePt: 6.5, anchor: "end" }),
  ];
}

/** To 0.1 kg, from 20 kg on to whole kilograms: what a bedside can use. */
function writeKg(kg: number, style: NumberStyle): string {
  return formatNumber(kg < 20 ? Math.round(kg * 10) / 10 : Math.round(kg), style);
}
