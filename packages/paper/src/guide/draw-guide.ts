import type { Box, Drawing, Item } from "../drawing/item.ts";
import { hairline } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
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
/** Type of the words at a panel of 60 mm, pt. */
const sizesPt = [9, 8.5, 8, 7.4, 7, 6.6];
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
  const panels = shown.map((technique, i) => ({
    technique,
    box: {
      xMm: box.xMm + (i % across) * (widthMm + gapMm),
      yMm: box.yMm + Math.floor(i / across) * (heightMm + gapMm),
      widthMm,
      heightMm,
    },
  }));
  // One size of type for all of them: the largest at which the longest text has room.
  const sizePt = sizesPt.find((size) =>
    panels.every((panel) => panelWords(input, panel, size).heightMm <= panelWords(input, panel, size).roomMm),
  );
  const items = panels.map((panel) => drawPanel(input, panel, sizePt ?? (sizesPt.at(-1) as number)));
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

interface Panel {
  readonly technique: Technique;
  readonly box: Box;
}

/** Where the parts of a panel stand, and how high its words are and may be. */
function panelWords({ typefaces, messages }: SheetContext, { technique, box }: Panel, sizePt: number) {
  const { xMm, yMm, widthMm, heightMm } = box;
  const scale = widthMm / 60;
  const drawing = techniqueDrawings[technique];
  // Half of the panel is picture.
  const pictureMm = Math.min(widthMm - 8, (heightMm * 0.5 * drawing.widthMm) / drawing.heightMm);
  const pictureHeightMm = (pictureMm * drawing.heightMm) / drawing.widthMm;
  const topMm = yMm + 6.5 * scale;
  const words = setParagraph(typefaces, messages.guide.techniques[technique].text, {
    at: [xMm + 3, topMm + pictureHeightMm + 1.5],
    widthMm: widthMm - 6,
    sizePt: sizePt * scale,
  });
  const roomMm = heightMm - 6.5 * scale - pictureHeightMm - 2.5;
  return { words, heightMm: words.heightMm, roomMm, scale, drawing, pictureMm, topMm };
}

function drawPanel(context: SheetContext, panel: Panel, sizePt: number): Item {
  const { technique, box } = panel;
  const { xMm, yMm, widthMm } = box;
  const { typefaces, messages } = context;
  const { title } = messages.guide.techniques[technique];
  const { words, scale, drawing, pictureMm, topMm } = panelWords(context, panel, sizePt);
  return group([
    { kind: "rectangle", ...box, radiusMm: 2, stroke: { colour: hairline, widthMm: 0.25 } },
    group([setText(typefaces, title, [xMm + 3, yMm + 5.2 * scale], { font: "bold", sizePt: 11 * scale })], {
      role: "H2",
    }),
    drawTechnique({ drawing, at: [xMm + (widthMm - pictureMm) / 2, topMm], widthMm: pictureMm, alt: title }),
    words.group,
  ]);
}
