import type { Box, Item } from "./item.ts";
import { ink, paperWhite } from "./palette.ts";
import { setText } from "./set-text.ts";
import { group } from "./shapes.ts";
import type { Typefaces } from "./typefaces.ts";

/** A piece of a page that is not broken: how high it is, and how to draw it in a column. */
export interface Block {
  readonly heightMm: number;
  /** Whether it must not be the last of a column. */
  readonly leads?: true;
  readonly draw: (xMm: number, yMm: number) => Item;
}

/** Sets blocks down one column after another, and page after page; a block that leads goes with the next. */
export function flowColumns(given: {
  readonly blocks: readonly Block[];
  readonly box: Box;
  readonly columns: number;
  readonly gapMm: number;
}): readonly (readonly Item[])[] {
  const { blocks, box, columns, gapMm } = given;
  const widthMm = (box.widthMm - (columns - 1) * gapMm) / columns;
  const pages: Item[][] = [[]];
  let column = 0;
  let y = box.yMm;
  const bottom = box.yMm + box.heightMm;
  for (const [i, block] of blocks.entries()) {
    const next = blocks[i + 1];
    const needed = block.heightMm + (block.leads && next !== undefined ? next.heightMm : 0);
    if (y + needed > bottom && y > box.yMm) {
      column += 1;
      y = box.yMm;
      if (column === columns) {
        pages.push([]);
        column = 0;
      }
    }
    pages.at(-1)?.push(block.draw(box.xMm + column * (widthMm + gapMm), y));
    y += block.heightMm;
  }
  return pages;
}

/** White words on black over what belongs to them. */
export function headingBlock(typefaces: Typefaces, words: string, widthMm: number): Block {
  return {
    heightMm: 6.6,
    leads: true,
    draw: (x, y) =>
      group(
        [
          { kind: "rectangle", xMm: x, yMm: y + 1, widthMm, heightMm: 4.6, fill: ink },
          setText(typefaces, words, [x + 1.5, y + 4.4], { font: "bold", sizePt: 9, colour: paperWhite }),
        ],
        { role: "H2" },
      ),
  };
}
