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
  /** What stands over it again where it is the first of a column. */
  readonly under?: Block;
  readonly draw: (xMm: number, yMm: number) => Item;
}

export interface Columns {
  readonly columns: number;
  readonly gapMm: number;
}

/** What stands under the blocks of the last page, over the whole width. */
export interface PageFoot {
  readonly heightMm: number;
  /** Between the lowest block and the foot of the page. */
  readonly draw: (fromMm: number) => readonly Item[];
}

export const noFoot: PageFoot = { heightMm: 0, draw: () => [] };

/**
 * Sets blocks down one column after another, and page after page, whose boxes may differ; a block that leads goes with the next. On the last page the columns are equally long, with the foot under
 * them; a foot for which there is no room goes on a page of its own.
 */
export function flowPages(
  given: {
    readonly blocks: readonly Block[];
    readonly boxOf: (page: number) => Box;
    readonly foot: PageFoot;
  } & Columns,
): readonly (readonly Item[])[] {
  const { blocks, boxOf, foot, ...columns } = given;
  const pages: (readonly Item[])[] = [];
  let rest = blocks;
  for (;;) {
    const box = boxOf(pages.length);
    const heightMm = box.heightMm - foot.heightMm;
    const last = fillColumns(rest, { ...box, heightMm }, columns);
    if (last.taken === rest.length && last.heightMm <= heightMm) {
      const even = fillEvenly(rest, { ...box, heightMm }, columns);
      return [...pages, [...drawPlaces(even.places), ...foot.draw(box.yMm + even.heightMm)]];
    }
    const { places, taken } = fillColumns(rest, box, columns);
    pages.push(drawPlaces(places));
    rest = rest.slice(taken);
  }
}

/** Blocks in columns as short as they can be, as one block. */
export function evenBlock(
  given: { readonly blocks: readonly Block[]; readonly widthMm: number } & Columns,
): Block {
  const { blocks, widthMm, ...columns } = given;
  const box = { xMm: 0, yMm: 0, widthMm, heightMm: Number.POSITIVE_INFINITY };
  const { places, heightMm } = fillEvenly(blocks, box, columns);
  return {
    heightMm,
    draw: (x, y) => group(places.map(({ block, xMm, yMm }) => block.draw(x + xMm, y + yMm))),
  };
}

interface Place {
  readonly block: Block;
  readonly xMm: number;
  readonly yMm: number;
}

interface Filled {
  readonly places: readonly Place[];
  /** How many blocks it holds: one at least, if there is one. */
  readonly taken: number;
  /** Of its longest column. */
  readonly heightMm: number;
}

/** As many blocks as the columns of one page hold. */
function fillColumns(blocks: readonly Block[], box: Box, { columns, gapMm }: Columns): Filled {
  const widthMm = (box.widthMm - (columns - 1) * gapMm) / columns;
  const places: Place[] = [];
  let column = 0;
  let y = box.yMm;
  let lowest = y;
  for (const [i, block] of blocks.entries()) {
    const next = blocks[i + 1];
    const needed = block.heightMm + (block.leads && next !== undefined ? next.heightMm : 0);
    if (y + needed > box.yMm + box.heightMm && y > box.yMm) {
      column += 1;
      y = box.yMm;
      if (column === columns) return { places, taken: i, heightMm: lowest - box.yMm };
    }
    const xMm = box.xMm + column * (widthMm + gapMm);
    const over = y === box.yMm && block.under !== undefined ? [block.under] : [];
    for (const own of [...over, block]) {
      places.push({ block: own, xMm, yMm: y });
      y += own.heightMm;
    }
    lowest = Math.max(lowest, y);
  }
  return { places, taken: blocks.length, heightMm: lowest - box.yMm };
}

function drawPlaces(places: readonly Place[]): readonly Item[] {
  return places.map(({ block, xMm, yMm }) => block.draw(xMm, yMm));
}

/** Blocks that are known to fit, in columns as short as they can be. */
function fillEvenly(blocks: readonly Block[], box: Box, columns: Columns): Filled {
  const whole = blocks.reduce((sum, { heightMm }) => sum + heightMm, 0);
  for (let heightMm = whole / columns.columns; heightMm < box.heightMm; heightMm += 1.5) {
    const filled = fillColumns(blocks, { ...box, heightMm }, columns);
    if (filled.taken === blocks.length && filled.heightMm <= box.heightMm) return filled;
  }
  return fillColumns(blocks, box, columns);
}

/** White words on black over what belongs to them. */
export function headingBlock(typefaces: Typefaces, words: string, widthMm: number): Block {
  return {
    heightMm: 6.2,
    leads: true,
    draw: (x, y) =>
      group(
        [
          { kind: "rectangle", xMm: x, yMm: y + 0.9, widthMm, heightMm: 4.6, fill: ink },
          setText(typefaces, words, [x + 1.5, y + 4.3], { font: "bold", sizePt: 9, colour: paperWhite }),
        ],
        { role: "H2" },
      ),
  };
}
