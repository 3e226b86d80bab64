import type { Box, Drawing, Item } from "../drawing/item.ts";
import { hairline } from "../drawing/palette.ts";
import { fitParagraph, setText } from "../drawing/set-text.ts";
import { group } from "../drawing/shapes.ts";
import { type Technique, techniqueDrawings } from "../drawings/technique-drawings.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawTechnique } from "./draw-technique.ts";

/** In the order in which they are needed. */
const shown: readonly Technique[] = [
  "lying-two",
  "lying-one",
  "arm",
  "half-sitting",
  "seated",
  "longer-than-tape",
  "waist",
  "thigh",
  "calf",
  "head",
  "knee-height",
  "forearm-bone",
];

const across = 3;
const gapMm = 4;

/**
 * The measuring guide: a poster of how every measurement is taken, in our own line drawings.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawGuide, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const imprint = await createImprint({
 *   paper: "strip",
 *   choices: {},
 *   softwareVersion: "0.1.0",
 *   modelVersion: defaultBodyModel().version,
 *   madeOn: "2026-11-25",
 *   expiresOn: "2027-11-25",
 *   sha256: (text) => createHash("sha256").update(text).digest("hex"),
 * });
 * assert.ok(imprint.ok);
 * const context = { typefaces, messages: ENGLISH_PAPER, imprint: imprint.value };
 * const guide = drawGuide({ ...context, size: pageSizes.a4 });
 * assert.equal(guide.pages.length, 1);
 * ```
 */
export function drawGuide(input: SheetContext & { readonly size: PageSize }): Drawing {
  const { size, messages } = input;
  const { guide } = messages;
  const box = contentBox(size);
  const down = Math.ceil(shown.length / across);
  const widthMm = (box.widthMm - (across - 1) * gapMm) / across;
  const heightMm = (box.heightMm - 2 - (down - 1) * gapMm) / down;
  const items = shown.map((technique, i) =>
    drawPanel(input, technique, {
      xMm: box.xMm + (i % across) * (widthMm + gapMm),
      yMm: box.yMm + Math.floor(i / across) * (heightMm + gapMm),
      widthMm,
      heightMm,
    }),
  );
  const page = framePage(input, {
    size,
    title: guide.title,
    subtitle: guide.subtitle,
    page: 1,
    pages: 1,
    items,
  });
  return { title: guide.title, language: messages.language.tag, pages: [page] };
}

function drawPanel({ typefaces, messages }: SheetContext, technique: Technique, box: Box): Item {
  const { title, text } = messages.guide.techniques[technique];
  const { xMm, yMm, widthMm, heightMm } = box;
  const scale = widthMm / 60;
  const drawing = techniqueDrawings[technique];
  // Half of the panel is picture.
  const pictureMm = Math.min(widthMm - 8, (heightMm * 0.5 * drawing.widthMm) / drawing.heightMm);
  const pictureHeight = (pictureMm * drawing.heightMm) / drawing.widthMm;
  const top = yMm + 6.5 * scale;
  const words = fitParagraph(typefaces, text, {
    at: [xMm + 3, top + pictureHeight + 1.5],
    widthMm: widthMm - 6,
    sizesPt: [9 * scale, 8 * scale, 7.4 * scale, 7 * scale, 6.6 * scale],
    roomMm: heightMm - 6.5 * scale - pictureHeight - 2.5,
  });
  return group([
    { kind: "rectangle", ...box, radiusMm: 2, stroke: { colour: hairline, widthMm: 0.25 } },
    group([setText(typefaces, title, [xMm + 3, yMm + 5.2 * scale], { font: "bold", sizePt: 11 * scale })], {
      role: "H2",
    }),
    drawTechnique({ drawing, at: [xMm + (widthMm - pictureMm) / 2, top], widthMm: pictureMm, alt: title }),
    words.group,
  ]);
}
