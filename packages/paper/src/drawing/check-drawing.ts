import type { Box, Drawing, FontName, Item, Point, Text } from "./item.ts";
import { textCorners } from "./text-box.ts";
import { overlapDepth } from "./turned-box.ts";
import type { Typefaces } from "./typefaces.ts";

/** What is wrong with a drawing before anybody prints it. */
export type DrawingFault =
  | { readonly type: "texts-overlap"; readonly page: string; readonly texts: readonly [string, string] }
  | { readonly type: "text-off-its-box"; readonly page: string; readonly text: string; readonly byMm: number }
  | {
      readonly type: "glyphs-missing";
      readonly page: string;
      readonly text: string;
      readonly characters: string;
    };

interface Placed {
  readonly text: Text;
  readonly corners: readonly Point[];
  /** Box parallel to the page round the corners. */
  readonly round: Box;
  readonly bounds: readonly Box[];
}

/** Texts may touch by this much: less than the width of the finest line. */
const toleranceMm = 0.05;

/**
 * Every text that overlaps another, runs off its box, its clip or the page, or has a character without a glyph.
 *
 * Goes by the ink (capitals, figures and what hangs below), turned as the text is. Watermarks are left out: text may
 * stand on them.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { checkDrawing, createTypefaces, type Drawing } from "@steelyard/paper";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const drawing = {
 *   title: "A line of 100 mm",
 *   language: "en",
 *   pages: [
 *     {
 *       widthMm: 210,
 *       heightMm: 297,
 *       label: "1",
 *       items: [
 *         { kind: "line", from: [20, 20], to: [120, 20], stroke: { colour: "#000000", widthMm: 0.25 } },
 *       ],
 *     },
 *   ],
 * } satisfies Drawing;
 * assert.deepEqual(checkDrawing(drawing, typefaces), []);
 * ```
 */
export function checkDrawing({ pages }: Drawing, typefaces: Typefaces): readonly DrawingFault[] {
  return pages.flatMap(({ label, items, widthMm, heightMm }) => {
    const page: Box = { xMm: 0, yMm: 0, widthMm, heightMm };
    const placed = items.flatMap((item) => placeTexts(item, [page], typefaces));
    return [
      ...placed.flatMap((own) => faultsOf(own, label, typefaces)),
      ...overlaps(placed).map((texts) => ({ type: "texts-overlap", page: label, texts }) as const),
    ];
  });
}

function placeTexts(item: Item, bounds: readonly Box[], typefaces: Typefaces): readonly Placed[] {
  if (item.kind === "group") {
    if (item.under) return [];
    const inner = item.clip === undefined ? bounds : [...bounds, item.clip];
    return item.items.flatMap((own) => placeTexts(own, inner, typefaces));
  }
  if (item.kind !== "text" || item.text.trim() === "") return [];
  const corners = textCorners(item, typefaces);
  const own = item.within === undefined ? bounds : [...bounds, item.within];
  return [{ text: item, corners, round: boxRound(corners), bounds: own }];
}

function boxRound(corners: readonly Point[]): Box {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const xMm = Math.min(...xs);
  const yMm = Math.min(...ys);
  return { xMm, yMm, widthMm: Math.max(...xs) - xMm, heightMm: Math.max(...ys) - yMm };
}

function faultsOf({ text, round, bounds }: Placed, page: string, typefaces: Typefaces): DrawingFault[] {
  const faults: DrawingFault[] = [];
  const byMm = Math.max(
    ...bounds.flatMap(({ xMm, yMm, widthMm, heightMm }) => [
      xMm - round.xMm,
      yMm - round.yMm,
      round.xMm + round.widthMm - xMm - widthMm,
      round.yMm + round.heightMm - yMm - heightMm,
    ]),
  );
  if (byMm > toleranceMm) faults.push({ type: "text-off-its-box", page, text: text.text, byMm });
  const characters = typefaces.missing(text.text, text.font as FontName).join("");
  if (characters !== "") faults.push({ type: "glyphs-missing", page, text: text.text, characters });
  return faults;
}

/** What is apart across the page needs no closer look: most texts are. */
function meetAcross(a: Box, b: Box): boolean {
  return a.xMm <= b.xMm + b.widthMm && b.xMm <= a.xMm + a.widthMm;
}

function overlaps(placed: readonly Placed[]): (readonly [string, string])[] {
  const sorted = [...placed].sort((a, b) => a.round.yMm - b.round.yMm);
  const found: (readonly [string, string])[] = [];
  for (const [i, a] of sorted.entries()) {
    for (let j = i + 1; j < sorted.length; j += 1) {
      const b = sorted[j] as Placed;
      if (b.round.yMm > a.round.yMm + a.round.heightMm) break;
      if (!meetAcross(a.round, b.round)) continue;
      if (overlapDepth(a.corners, b.corners) > toleranceMm) found.push([a.text.text, b.text.text]);
    }
  }
  return found;
}
