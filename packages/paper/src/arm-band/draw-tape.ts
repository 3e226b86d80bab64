import { formatNumber } from "@steelyard/core/units";
import type { Group, Item, Point, Segment, Stroke } from "../drawing/item.ts";
import { faint, ink, shade } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, polyline, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

export const tapeWidthMm = 16;
/** The thickest arm the chart of the strip goes to. */
const longestMm = 500;
/** Grey past the last tick of a piece, on which the next is glued, mm. */
const tabMm = 10;

export interface TapePiece {
  readonly index: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** The pieces of one length, in whole centimetres, that a height has room for. */
export function layOutTape(heightMm: number): readonly TapePiece[] {
  const room = Math.floor((heightMm - tabMm - 8) / 10) * 10;
  const count = Math.ceil(longestMm / room);
  const runMm = Math.ceil(longestMm / count / 10) * 10;
  return Array.from({ length: count }, (_, index) => ({
    index,
    fromMm: index * runMm,
    toMm: Math.min((index + 1) * runMm, longestMm),
  }));
}

export const cutLine: Stroke = { colour: ink, widthMm: 0.2, dashMm: [1.6, 1.2] };

/** One piece of the tape, from its first tick down; figures stand upright once it lies round an arm. */
export function drawTapePiece(
  { typefaces, messages }: SheetContext,
  given: { readonly piece: TapePiece; readonly pieces: number; readonly at: Point },
): Group {
  const { piece, pieces, at } = given;
  const [x, y] = at;
  const { fromMm, toMm, index } = piece;
  const lengthMm = toMm - fromMm;
  const isLast = index === pieces - 1;
  const bottom = y + lengthMm + (isLast ? 6 : tabMm);
  const segments: Segment[] = [];
  const items: Item[] = [];
  for (let mm = fromMm; mm <= toMm; mm += 1) {
    const tickMm = mm % 10 === 0 ? 6 : mm % 5 === 0 ? 4.4 : 2.6;
    segments.push(["M", x, y + mm - fromMm], ["L", x + tickMm, y + mm - fromMm]);
    const isFigure = mm % 10 === 0 && mm > fromMm && (mm < toMm || isLast);
    if (!isFigure) continue;
    const strong = mm % 50 === 0;
    items.push(
      setText(typefaces, formatNumber(mm, messages.language.numbers), [x + 7.4, y + mm - fromMm], {
        sizePt: strong ? 9 : 7,
        font: strong ? "bold" : "regular",
        anchor: "middle",
        angleDeg: 90,
      }),
    );
  }
  const { armBand } = messages;
  const name = armBand.piece({ piece: index + 1, pieces });
  const turned = { angleDeg: 90, sizePt: 5.5 };
  return group([
    ...(isLast
      ? []
      : [
          {
            kind: "rectangle",
            xMm: x,
            yMm: y + lengthMm,
            widthMm: tapeWidthMm,
            heightMm: tabMm,
            fill: shade,
          } as const,
          setText(typefaces, armBand.glue({ piece: index + 2 }), [x + tapeWidthMm / 2, y + lengthMm + 5.6], {
            sizePt: Math.min(5, 70 / armBand.glue({ piece: index + 2 }).length),
            anchor: "middle",
          }),
        ]),
    polyline(
      [
        [x, y],
        [x, bottom],
        [x + tapeWidthMm, bottom],
        [x + tapeWidthMm, y],
      ],
      { stroke: cutLine },
    ),
    { kind: "path", segments, stroke: strokes.thin },
    index === 0
      ? line([x, y], [x + tapeWidthMm, y], strokes.heavy)
      : line([x, y], [x + tapeWidthMm, y], { colour: faint, widthMm: 0.2 }),
    ...(index === 0
      ? [
          setText(typefaces, armBand.zero, [x + tapeWidthMm / 2, y - 1.4], {
            sizePt: 6,
            font: "bold",
            anchor: "middle",
          }),
        ]
      : []),
    ...items,
    setText(typefaces, `${armBand.tape}, ${name}`, [x + 12.2, y + 14], turned),
  ]);
}
