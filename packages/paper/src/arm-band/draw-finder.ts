import { formatNumber } from "@steelyard/core/units";
import type { Group, Item, Point, Segment } from "../drawing/item.ts";
import { ink, paperWhite, shade } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, polyline, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { cutLine } from "./draw-tape.ts";

export const finderWidthMm = 18;
/** Grey over the middle of the upper half, on which the other is glued, mm. */
export const finderTabMm = 10;
/** Half of the longest upper arm of a tall adolescent, with room to spare, mm. */
const halfMm = 200;

/** One half of the finder: it counts from the middle outwards, so that equal figures at both tips put the middle where it belongs. */
export function drawFinder(
  { typefaces, messages }: SheetContext,
  given: { readonly half: 0 | 1; readonly at: Point; readonly heightMm: number },
): Group {
  const { half, at, heightMm } = given;
  const [x, y] = at;
  const lengthMm = Math.min(halfMm, Math.floor((heightMm - 8) / 10) * 10);
  const bottom = y + lengthMm + 6;
  // Once the upper half is turned round and glued on, the ticks of both stand at one edge.
  const right = half === 0;
  const from = right ? x + finderWidthMm : x;
  const inwards = right ? -1 : 1;
  const segments: Segment[] = [];
  const figures: Item[] = [];
  for (let mm = 0; mm <= lengthMm; mm += 1) {
    const tickMm = mm % 10 === 0 ? 6 : mm % 5 === 0 ? 4.4 : 2.6;
    segments.push(["M", from, y + mm], ["L", from + inwards * tickMm, y + mm]);
    if (mm % 10 !== 0 || mm < 20) continue;
    const strong = mm % 50 === 0;
    figures.push(
      setText(typefaces, formatNumber(mm), [from + inwards * 6.8, y + mm + (strong ? 1.05 : 0.85)], {
        sizePt: strong ? 9 : 7,
        font: strong ? "bold" : "regular",
        anchor: right ? "end" : "start",
      }),
    );
  }
  const { armBand } = messages;
  const words = right ? armBand.toShoulder : armBand.toElbow;
  const blockLeft = right ? x : x + 6.4;
  const blockMm = finderWidthMm - 6.4;
  const tab: Item[] = right
    ? [
        {
          kind: "rectangle",
          xMm: x,
          yMm: y - finderTabMm,
          widthMm: finderWidthMm,
          heightMm: finderTabMm,
          fill: shade,
        },
        setText(typefaces, armBand.glueOther, [x + finderWidthMm / 2, y - finderTabMm / 2 + 0.7], {
          sizePt: Math.min(6, 85 / armBand.glueOther.length),
          anchor: "middle",
        }),
      ]
    : [];
  const top = right ? y - finderTabMm : y;
  return group([
    ...tab,
    polyline(
      [
        [x, top],
        [x, bottom],
        [x + finderWidthMm, bottom],
        [x + finderWidthMm, top],
      ],
      { closed: true, stroke: cutLine },
    ),
    { kind: "path", segments, stroke: strokes.thin },
    { kind: "rectangle", xMm: blockLeft, yMm: y, widthMm: blockMm, heightMm: 7, fill: ink },
    setText(typefaces, armBand.middle, [blockLeft + blockMm / 2, y + 4.4], {
      sizePt: Math.min(6, 45 / armBand.middle.length),
      font: "bold",
      anchor: "middle",
      colour: paperWhite,
    }),
    ...figures,
    setText(typefaces, `${armBand.finder}: ${words}`, [right ? x + 2 : x + finderWidthMm - 3.4, y + 30], {
      sizePt: 6,
      angleDeg: 90,
    }),
  ]);
}
