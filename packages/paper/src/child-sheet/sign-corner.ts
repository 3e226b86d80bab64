import type { Corner } from "../booklet/dose-block.ts";
import type { Block } from "../drawing/flow-columns.ts";
import { ink, paperWhite, soft } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

/** Room for a time or the letters of a name, mm. */
const blankMm = 10;
const betweenMm = 1.2;
const signMm = 3 * blankMm + 2 * betweenMm;

/** Three lines to write on, one under each word of the heading: when, by whom, checked by whom. */
export const signCorner: Corner = {
  widthMm: signMm,
  heightMm: 4.2,
  draw: ([right, bottom]) =>
    group(
      [0, 1, 2].map((i) => {
        const from = right - signMm + i * (blankMm + betweenMm);
        return line([from, bottom - 0.5], [from + blankMm, bottom - 0.5], strokes.thin);
      }),
    ),
};

/** White words on black over what belongs to them, and what the lines under it are for. */
export function signHeading({ typefaces, messages }: SheetContext, words: string, widthMm: number): Block {
  const { given, by, checked } = messages.childSheet;
  return {
    heightMm: 6.2,
    leads: true,
    draw: (x, y) =>
      group([
        { kind: "rectangle", xMm: x, yMm: y + 0.9, widthMm, heightMm: 4.2, fill: ink },
        group(
          [setText(typefaces, words, [x + 1.5, y + 4.3], { font: "bold", sizePt: 9, colour: paperWhite })],
          {
            role: "H2",
          },
        ),
        ...[given, by, checked].map((text, i) =>
          setText(typefaces, text, [x + widthMm - signMm + i * (blankMm + betweenMm), y + 4.15], {
            sizePt: 6,
            colour: paperWhite,
          }),
        ),
      ]),
  };
}

/** A line for what no line was computed for: a dose given again, another medicine. */
export function blankBlock(widthMm: number, heightMm: number): Block {
  return {
    heightMm,
    draw: (x, y) => {
      const foot = y + heightMm - 0.5;
      return group([
        line([x, foot], [x + widthMm - signMm - betweenMm, foot], { ...strokes.thin, colour: soft }),
        signCorner.draw([x + widthMm, y + heightMm]),
      ]);
    },
  };
}
