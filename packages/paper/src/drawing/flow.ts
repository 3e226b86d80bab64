import type { Box, Item, Role } from "./item.ts";
import { setParagraph, type TextLook } from "./set-text.ts";
import type { Typefaces } from "./typefaces.ts";

/** Sets one thing under another down a column. */
export interface Flow {
  readonly items: readonly Item[];
  /** Where the next thing goes. */
  readonly yMm: number;
  paragraph(text: string, look?: TextLook & { readonly role?: Role; readonly indentMm?: number }): void;
  /** Whatever is drawn at a height and takes so much of it. */
  put(draw: (yMm: number) => { readonly items: readonly Item[]; readonly heightMm: number }): void;
  space(mm: number): void;
}

export function createFlow(typefaces: Typefaces, box: Pick<Box, "xMm" | "yMm" | "widthMm">): Flow {
  const items: Item[] = [];
  let yMm = box.yMm;
  return {
    items,
    get yMm() {
      return yMm;
    },
    paragraph(text, { indentMm = 0, ...look } = {}) {
      const set = setParagraph(typefaces, text, {
        ...look,
        at: [box.xMm + indentMm, yMm],
        widthMm: box.widthMm - indentMm,
      });
      items.push(set.group);
      yMm += set.heightMm;
    },
    put(draw) {
      const drawn = draw(yMm);
      items.push(...drawn.items);
      yMm += drawn.heightMm;
    },
    space(mm) {
      yMm += mm;
    },
  };
}
