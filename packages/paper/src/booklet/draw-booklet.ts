import type { Formulary, ProblemId } from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import type { Box, Drawing, Item, Page } from "../drawing/item.ts";
import { hairline, ink, paperWhite } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawBeforeGiving } from "./draw-before-giving.ts";
import { drawStep, stepNote } from "./draw-step.ts";
import { type WeightStep, weightSteps, withProblems } from "./weight-steps.ts";

export interface BookletInput extends SheetContext {
  readonly size: PageSize;
  readonly formulary: Formulary;
  /** The problems whose doses are in it, in their order on the page. */
  readonly problems: readonly ProblemId[];
  /** Told after each weight step: how many of how many are drawn. */
  readonly onStep?: (done: number, of: number) => void;
}

/** What a bay needs first (common practice); any others may be chosen instead. */
export const emergencyProblems: readonly ProblemId[] = [
  "arrest",
  "airway",
  "anaphylaxis",
  "shock",
  "seizure",
];

/** Room at the outer edge for the tabs, mm. */
const tabMm = 7;

/**
 * The dose booklet: for each weight step the doses of the site's formulary in mL, infusions, equipment and normal signs, with a
 * contents page by weight and tabs at the edge.
 *
 * Every dose is the one that the sheet gives for the weight in the middle of its step, written by the same functions; within a step
 * no dose as drawn up changes by more than 10 %.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { draftFormulary } from "@steelyard/formulary";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawBooklet, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
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
 * const problems = ["anaphylaxis"] as const;
 * const booklet = drawBooklet({ ...context, size: pageSizes.a4, formulary: draftFormulary, problems });
 * assert.ok(booklet.pages.length > 10);
 * ```
 */
export function drawBooklet(input: BookletInput): Drawing {
  const { size, messages, problems } = input;
  const { booklet } = messages;
  const formulary = withProblems(input);
  const steps = weightSteps({ formulary, problems });
  const whole = contentBox(size);
  const box: Box = { ...whole, widthMm: whole.widthMm - tabMm };
  const bodies: (readonly (readonly Item[])[])[] = [];
  for (const step of steps) {
    bodies.push(drawStep(input, { formulary, problems, step, box }));
    input.onStep?.(bodies.length, steps.length);
  }
  const behind = drawBeforeGiving(input, { formulary, problems, box: whole });
  const beforeBehind = 1 + bodies.reduce((sum, pages) => sum + pages.length, 0);
  const pageCount = beforeBehind + behind.length;
  const firstPages = bodies.reduce<number[]>((pages, _, i) => {
    pages.push(i === 0 ? 2 : (pages[i - 1] as number) + (bodies[i - 1] as readonly unknown[]).length);
    return pages;
  }, []);
  const contents = framePage(input, {
    size,
    title: booklet.title,
    subtitle: booklet.contentsTitle,
    page: 1,
    pages: pageCount,
    items: drawContents(input, {
      steps,
      firstPages,
      box: whole,
      ...(behind.length > 0 ? { beforeGivingPage: beforeBehind + 1 } : {}),
    }),
  });
  const pages: Page[] = [contents];
  for (const [i, step] of steps.entries()) {
    for (const [k, items] of (bodies[i] as readonly (readonly Item[])[]).entries()) {
      pages.push(
        framePage(input, {
          size,
          title: nameOf(input, step),
          subtitle: stepNote(input, step),
          page: (firstPages[i] as number) + k,
          pages: pageCount,
          items: [...items, ...drawTab(input, { step, at: i / Math.max(steps.length - 1, 1), box: whole })],
        }),
      );
    }
  }
  for (const [k, items] of behind.entries()) {
    const page = beforeBehind + k + 1;
    pages.push(
      framePage(input, {
        size,
        title: booklet.beforeGivingTitle,
        subtitle: booklet.beforeGivingNote,
        page,
        pages: pageCount,
        items,
      }),
    );
  }
  return { title: booklet.title, language: messages.language.tag, pages };
}

function nameOf({ messages }: SheetContext, { fromKg, toKg }: WeightStep): string {
  return messages.booklet.step({
    from: formatNumber(fromKg, messages.language.numbers),
    to: formatNumber(toKg, messages.language.numbers),
  });
}

/** A black tab at the outer edge, lower the heavier: the closed booklet shows a staircase of weights. */
function drawTab(
  { typefaces, messages }: SheetContext,
  { step, at, box }: { step: WeightStep; at: number; box: Box },
): readonly Item[] {
  const heightMm = 16;
  const x = box.xMm + box.widthMm - tabMm + 2;
  const y = box.yMm + at * (box.heightMm - heightMm);
  const words = `${formatNumber(step.fromKg, messages.language.numbers)}\u00a0${messages.booklet.tabUnit}`;
  return [
    group([
      { kind: "rectangle", xMm: x, yMm: y, widthMm: tabMm - 2, heightMm, fill: ink },
      setText(typefaces, words, [x + 3.4, y + heightMm / 2], {
        font: "bold",
        sizePt: 8,
        anchor: "middle",
        angleDeg: -90,
        colour: paperWhite,
      }),
    ]),
  ];
}

function drawContents(
  { typefaces, messages }: SheetContext,
  {
    steps,
    firstPages,
    box,
    beforeGivingPage,
  }: {
    readonly steps: readonly WeightStep[];
    readonly firstPages: readonly number[];
    readonly box: Box;
    readonly beforeGivingPage?: number;
  },
): readonly Item[] {
  const { booklet } = messages;
  const behind =
    beforeGivingPage === undefined
      ? ""
      : ` ${booklet.beforeGivingAt({ page: formatNumber(beforeGivingPage, messages.language.numbers) })}`;
  const how = setParagraph(typefaces, `${booklet.how}${behind}`, {
    at: [box.xMm, box.yMm],
    widthMm: box.widthMm,
    sizePt: 10.5,
  });
  const top = box.yMm + how.heightMm + 6;
  const columns = 4;
  const rows = Math.ceil(steps.length / columns);
  const rowMm = Math.min(9, (box.yMm + box.heightMm - top - 8) / rows);
  const columnMm = box.widthMm / columns;
  const heads = Array.from({ length: columns }, (_, j): Item[] => {
    const x = box.xMm + j * columnMm;
    return [
      setText(typefaces, booklet.weightColumn, [x, top + 3], { sizePt: 7 }),
      setText(typefaces, booklet.pageColumn, [x + columnMm - 8, top + 3], { sizePt: 7, anchor: "end" }),
    ];
  }).flat();
  const entries = steps.map((step, i) => {
    const x = box.xMm + Math.floor(i / rows) * columnMm;
    const y = top + 8 + (i % rows) * rowMm + 3;
    return group(
      [
        setText(typefaces, nameOf({ typefaces, messages } as SheetContext, step), [x, y], {
          font: "bold",
          sizePt: 10,
        }),
        setText(
          typefaces,
          formatNumber(firstPages[i] as number, messages.language.numbers),
          [x + columnMm - 8, y],
          {
            sizePt: 10,
            anchor: "end",
          },
        ),
        line([x, y + 2], [x + columnMm - 8, y + 2], { colour: hairline, widthMm: 0.12 }),
      ],
      { role: "LI" },
    );
  });
  return [how.group, ...heads, group(entries, { role: "L" })];
}
