import { formatNumber } from "@steelyard/core/units";
import type { Colour, Item, Page, Point, Stroke, Text, Typefaces } from "@steelyard/paper";

const INK: Colour = "#000000";
export const SOFT: Colour = "#4a4a4a";
export const GRID: Colour = "#d2d2d2";
const WIDTH_MM = 170;

/** A set of axes that marks are put on, in the units of the data; drawn in mm. */
export interface Chart {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly items: Item[];
  line(from: Point, to: Point, stroke?: Partial<Stroke>): void;
  text(
    text: string,
    at: Point,
    look?: { anchor?: Text["anchor"]; sizePt?: number; bold?: boolean; colour?: Colour },
  ): void;
  dot(at: Point, radiusMm?: number, fill?: Colour): void;
  page(label: string): Page;
}

export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly label: string;
  /** Names in place of numbers, at 0, 1, 2, ... from the top. */
  readonly names?: readonly string[];
  readonly unit?: string;
}

/** Empty axes with grid, ticks and labels. */
export function createChart(given: { typefaces: Typefaces; x: Axis; y: Axis; heightMm?: number }): Chart {
  const { typefaces, heightMm = 85 } = given;
  const names = given.y.names ?? [];
  const widest = Math.max(
    10,
    ...names.map((name) => typefaces.widthMm(name, { font: "regular", sizePt: 8 })),
  );
  const box = {
    left: Math.min(70, widest + (given.y.label === "" ? 4 : 9)),
    right: WIDTH_MM - 4,
    top: 4,
    bottom: heightMm - 13,
  };
  const x = (value: number): number =>
    box.left + ((value - given.x.from) / (given.x.to - given.x.from)) * (box.right - box.left);
  const y = (value: number): number =>
    box.bottom - ((value - given.y.from) / (given.y.to - given.y.from)) * (box.bottom - box.top);
  const items: Item[] = [];
  const chart: Chart = {
    x,
    y,
    items,
    line: (from, to, stroke = {}) =>
      items.push({ kind: "line", from, to, stroke: { colour: INK, widthMm: 0.25, ...stroke } }),
    text: (text, at, { anchor = "start", sizePt = 8, bold = false, colour = INK } = {}) => {
      const font = bold ? "bold" : "regular";
      items.push({
        kind: "text",
        text,
        at,
        anchor,
        font,
        sizePt,
        colour,
        widthMm: typefaces.widthMm(text, { font, sizePt }),
      });
    },
    dot: ([xMm, yMm], radiusMm = 0.9, fill = INK) =>
      items.push({
        kind: "rectangle",
        xMm: xMm - radiusMm,
        yMm: yMm - radiusMm,
        widthMm: 2 * radiusMm,
        heightMm: 2 * radiusMm,
        radiusMm,
        fill,
      }),
    page: (label) => ({ widthMm: WIDTH_MM, heightMm, label, items }),
  };
  const grid = { colour: GRID, widthMm: 0.15 };
  for (const tick of ticks(given.x.from, given.x.to)) {
    chart.line([x(tick), box.top], [x(tick), box.bottom], grid);
    chart.text(formatNumber(tick), [x(tick), box.bottom + 4], { anchor: "middle" });
  }
  for (const [i, name] of names.entries())
    chart.text(fit(typefaces, name, box.left - 3), [box.left - 2, y(i) + 1], { anchor: "end" });
  if (names.length === 0)
    for (const tick of ticks(given.y.from, given.y.to)) {
      chart.line([box.left, y(tick)], [box.right, y(tick)], grid);
      chart.text(formatNumber(tick), [box.left - 1.5, y(tick) + 1], { anchor: "end" });
    }
  chart.line([box.left, box.bottom], [box.right, box.bottom]);
  chart.text(given.x.label, [(box.left + box.right) / 2, heightMm - 3], { anchor: "middle", colour: SOFT });
  if (given.y.label !== "") {
    const widthMm = typefaces.widthMm(given.y.label, { font: "regular", sizePt: 8 });
    items.push({
      kind: "text",
      text: given.y.label,
      at: [3.5, (box.top + box.bottom) / 2],
      anchor: "middle",
      font: "regular",
      sizePt: 8,
      colour: SOFT,
      angleDeg: -90,
      widthMm,
    });
  }
  return chart;
}

/** A name cut to a width, with its end told. */
function fit(typefaces: Typefaces, name: string, widthMm: number): string {
  const wide = (text: string): boolean => typefaces.widthMm(text, { font: "regular", sizePt: 8 }) > widthMm;
  if (!wide(name)) return name;
  let cut = name;
  while (cut.length > 1 && wide(`${cut}…`)) cut = cut.slice(0, -1);
  return `${cut}…`;
}

/** Round numbers over a range: 4 to 9 of them, in steps of 1, 2 or 5 times a power of ten. */
function ticks(from: number, to: number): readonly number[] {
  const rough = (to - from) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((own) => own * power).find((own) => own >= rough) ?? 10 * power;
  const marks: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + 1e-9 * step; i++)
    marks.push(Math.round(i * step * 1e9) / 1e9);
  return marks;
}
