import type { SiteProfile } from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import type { Box, Drawing, Item } from "../drawing/item.ts";
import { hairline, soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { drawLyingChild } from "../figures/lying-child.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawAnswers } from "./draw-answers.ts";
import { type ReadingChild, readChildren } from "./read-children.ts";

export interface ReadingTestInput extends SheetContext {
  readonly size: PageSize;
  readonly site?: SiteProfile | undefined;
}

/**
 * The reading test: ten invented children to read off the length strip, and a page of answers from the body model at the same site.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawReadingTest, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
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
 * const test = drawReadingTest({ ...context, size: pageSizes.a4 });
 * assert.equal(test.pages.length, 2);
 * ```
 */
export function drawReadingTest(input: ReadingTestInput): Drawing {
  const { size, messages, site } = input;
  const { readingTest } = messages;
  const children = readChildren(site);
  const questions = framePage(input, {
    size,
    title: readingTest.title,
    subtitle: readingTest.subtitle,
    page: 1,
    pages: 2,
    items: drawQuestions(input, children),
  });
  const answers = framePage(input, {
    size,
    title: readingTest.answersTitle,
    subtitle: readingTest.answersSubtitle,
    page: 2,
    pages: 2,
    items: drawAnswers(input, children, contentBox(size)),
  });
  return { title: readingTest.title, language: messages.language.tag, pages: [questions, answers] };
}

const across = 2;
const gapMm = 5;
const headMm = 22;

function drawQuestions(input: ReadingTestInput, children: readonly ReadingChild[]): readonly Item[] {
  const { typefaces, messages, size } = input;
  const { readingTest } = messages;
  const box = contentBox(size);
  const how = setParagraph(typefaces, readingTest.how, {
    at: [box.xMm, box.yMm],
    widthMm: box.widthMm,
    sizePt: 10,
  });
  const signAt = box.yMm + headMm - 5;
  const middle = box.xMm + box.widthMm * 0.6;
  const down = Math.ceil(children.length / across);
  const widthMm = (box.widthMm - gapMm) / across;
  const heightMm = (box.heightMm - headMm - (down - 1) * gapMm) / down;
  return [
    how.group,
    blank(input, readingTest.reader, box.xMm, signAt, middle - 6),
    blank(input, readingTest.date, middle, signAt, box.xMm + box.widthMm),
    ...children.map((child, i) =>
      drawCard(input, child, i + 1, {
        xMm: box.xMm + (i % across) * (widthMm + gapMm),
        yMm: box.yMm + headMm + Math.floor(i / across) * (heightMm + gapMm),
        widthMm,
        heightMm,
      }),
    ),
  ];
}

/** A word and a line to write on. */
function blank({ typefaces }: SheetContext, word: string, fromMm: number, yMm: number, toMm: number): Item {
  const text = setText(typefaces, word, [fromMm, yMm], { sizePt: 9, colour: soft });
  return group([text, line([fromMm + text.widthMm + 2, yMm + 0.6], [toMm, yMm + 0.6], strokes.thin)], {
    role: "P",
  });
}

/** The longest child of the test fills its card; the others are as much shorter as they are. */
const longestCm = 185;

function drawCard(input: ReadingTestInput, child: ReadingChild, number: number, box: Box): Item {
  const { typefaces, messages } = input;
  const { readingTest } = messages;
  const { xMm, yMm, widthMm, heightMm } = box;
  const figureMm = ((widthMm - 12) * child.lengthCm) / longestCm;
  const top = yMm + 7;
  const lying = drawLyingChild({ at: [xMm + 6, top + figureMm * 0.17], lengthMm: Math.min(figureMm, 62) });
  const right = xMm + widthMm;
  const base = yMm + heightMm;
  return group([
    { kind: "rectangle", ...box, radiusMm: 2, stroke: { colour: hairline, widthMm: 0.25 } },
    setText(typefaces, readingTest.child({ number }), [xMm + 3, yMm + 5], { font: "bold", sizePt: 10 }),
    setText(
      typefaces,
      readingTest.length({ cm: formatNumber(child.lengthCm, messages.language.numbers) }),
      [right - 3, yMm + 5],
      {
        font: "bold",
        sizePt: 11,
        anchor: "end",
      },
    ),
    setText(
      typefaces,
      readingTest.arm({ mm: formatNumber(child.armMm, messages.language.numbers) }),
      [right - 3, yMm + 10.4],
      {
        font: "bold",
        sizePt: 11,
        anchor: "end",
      },
    ),
    group(lying.items, { role: "Figure", alt: readingTest.childAlt }),
    blank(input, readingTest.total, xMm + 3, base - 3, xMm + widthMm * 0.53),
    blank(input, readingTest.ideal, xMm + widthMm * 0.55, base - 3, right - 3),
  ]);
}
