import { createFlow } from "../drawing/flow.ts";
import type { Box, Drawing, Group, Item } from "../drawing/item.ts";
import { setParagraph } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { drawMeasuredArm } from "../figures/measured-arm.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawFinder, finderTabMm, finderWidthMm } from "./draw-finder.ts";
import { drawTapePiece, layOutTape, tapeWidthMm } from "./draw-tape.ts";

const gapMm = 7;

/**
 * The arm band: a tape of 500 mm to cut out in pieces, with the finder of the middle of the upper arm, at 1:1.
 *
 * Every tick stands on its millimetre; a piece begins on the last tick of the one before.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawArmBand, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
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
 * const band = drawArmBand({ ...context, size: pageSizes.a4 });
 * assert.equal(band.pages.length, 1);
 * ```
 */
export function drawArmBand(input: SheetContext & { readonly size: PageSize }): Drawing {
  const { size, messages, typefaces } = input;
  const { armBand } = messages;
  const box = contentBox(size);
  const pieces = layOutTape(box.heightMm);
  const columnMm = tapeWidthMm + gapMm;
  const tape = pieces.map((piece, i) =>
    drawTapePiece(input, { piece, pieces: pieces.length, at: [box.xMm + i * columnMm, box.yMm + 4] }),
  );
  const finderLeft = box.xMm + pieces.length * columnMm;
  const finder = ([0, 1] as const).map((half) =>
    drawFinder(input, {
      half,
      at: [finderLeft + half * (finderWidthMm + gapMm), box.yMm + 4 + finderTabMm],
      heightMm: box.heightMm - 8 - finderTabMm,
    }),
  );
  const wordsLeft = finderLeft + 2 * (finderWidthMm + gapMm);
  const words: Box = { ...box, xMm: wordsLeft, widthMm: box.xMm + box.widthMm - wordsLeft };
  const flow = createFlow(typefaces, { ...words, yMm: words.yMm + 2 });
  for (const [title, lines] of [
    [armBand.makeTitle, armBand.make],
    [armBand.useTitle, armBand.use],
  ] as const) {
    flow.paragraph(title, { font: "bold", sizePt: 12, role: "H2" });
    flow.space(1);
    for (const [i, text] of lines.entries()) {
      flow.paragraph(`${i + 1}.\u00a0${text}`, { sizePt: 9 });
      flow.space(1.4);
    }
    flow.space(4);
  }
  const room = box.yMm + box.heightMm - flow.yMm;
  const arm = drawArmPicture(input, { ...words, yMm: flow.yMm, heightMm: Math.min(room - 4, 95) });
  const items: Item[] = [
    group(tape, { role: "Figure", alt: armBand.tapeAlt }),
    group(finder, { role: "Figure", alt: armBand.finderAlt }),
    ...flow.items,
    arm,
  ];
  const page = framePage(input, {
    size,
    title: armBand.title,
    subtitle: armBand.subtitle,
    page: 1,
    pages: 1,
    items,
  });
  return { title: armBand.title, language: messages.language.tag, pages: [page] };
}

/** The arm with its two tips, the mark halfway and the tape, each with its word. */
function drawArmPicture({ typefaces, messages }: SheetContext, box: Box): Group {
  const { armBand } = messages;
  const arm = drawMeasuredArm({ at: [box.xMm, box.yMm], heightMm: box.heightMm });
  const left = Math.max(arm.tapeRight[0], arm.shoulder[0]) + 5;
  const words = [
    { at: arm.shoulder, text: armBand.shoulderTip },
    { at: arm.middle, text: armBand.middleMark },
    { at: arm.elbow, text: armBand.elbowTip },
  ].flatMap(({ at, text }): Item[] => {
    const set = setParagraph(typefaces, text, {
      at: [left, at[1] - 1.9],
      widthMm: box.xMm + box.widthMm - left,
      sizePt: 8.5,
    });
    return [line([at[0] + 1.2, at[1]], [left - 1, at[1]], strokes.thin), set.group];
  });
  return group([...arm.items, ...words], { role: "Figure", alt: armBand.armAlt });
}
