import type { SheetLine } from "@steelyard/core/dosing";
import { describeDosingWarning, describeProblem, describeWorking } from "@steelyard/core/wording";
import { bookletType, type DoseType, denseType, doseBlock, roomyType } from "../booklet/dose-block.ts";
import { lookupFoot } from "../booklet/lookup-foot.ts";
import { shareSentences } from "../booklet/shared-sentences.ts";
import { writeLine } from "../booklet/write-line.ts";
import { type Block, flowPages, headingBlock, type PageFoot } from "../drawing/flow-columns.ts";
import type { Box, Drawing, Item, Page } from "../drawing/item.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { ChildSheetInput } from "./child-sheet-input.ts";
import { drawHead, drawShared, drawShortHead, type Head } from "./draw-head.ts";
import { blankBlock, signCorner, signHeading } from "./sign-corner.ts";
import { workingBlock } from "./working-block.ts";

const columns = 2;
const gapMm = 5;
/** Height of a line to write on, mm. */
const blankMm = 7.4;

/**
 * The sheet of one child: measurements, weight and range, the doses of the chosen problems with room for times and
 * signatures on the front; the working of every dose, equipment and signs on the back. What one sheet does not hold goes on further ones, each
 * with a front and a back of its own and a number.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { computeChild } from "@steelyard/core/child";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { defaultBodyModel } from "@steelyard/core/body";
 * import { createImprint, createTypefaces, drawChildSheet, ENGLISH_PAPER, pageSizes } from "@steelyard/paper";
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
 * const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
 * const report = computeChild({ measurements, formulary: draftFormulary });
 * assert.ok(report.ok);
 * const measured = ["length 136 cm", "arm 190 mm"];
 * const problems = ["anaphylaxis"] as const;
 * const sheet = drawChildSheet({ ...context, size: pageSizes.a4, report: report.value, measured, problems });
 * assert.equal(sheet.pages.length, 2);
 * ```
 */
export function drawChildSheet(input: ChildSheetInput): Drawing {
  const { messages, size } = input;
  const { childSheet } = messages;
  const box = contentBox(size);
  const chosen = chosenLines(input);
  const frontIn = (type: DoseType) => () => drawFronts(input, { chosen, type }, box);
  const backIn = (sizePt: number) => () => drawBacks(input, { chosen, sizePt }, box);
  const fronts = largestOnOneSheet([frontIn(denseType), frontIn(bookletType), frontIn(roomyType)]);
  // The smallest is that of the imprint, for two long problems on one Letter page.
  const backs = largestOnOneSheet([backIn(5.6), backIn(6), backIn(6.4), backIn(7)]);
  const sheets = Math.max(fronts.length, backs.length);
  const pages = Array.from({ length: sheets }, (_, i): readonly Page[] => {
    const sheet = { sheet: i + 1, sheets };
    const sides = [
      { title: childSheet.title, items: fronts[i], words: childSheet.front(sheet) },
      { title: childSheet.workingTitle, items: backs[i], words: childSheet.back(sheet) },
    ];
    return sides.map(({ title, items, words }, side) =>
      framePage(input, {
        size,
        title: items === undefined ? childSheet.notesTitle : title,
        subtitle: items === undefined ? childSheet.notes(sheet) : words,
        page: 2 * i + side + 1,
        pages: 2 * sheets,
        items: items ?? furtherSide(input, box),
      }),
    );
  });
  return { title: childSheet.title, language: messages.language.tag, pages: pages.flat() };
}

/** From the smallest type up, the largest with which one sheet holds everything; the smallest where none does. */
function largestOnOneSheet([smallest, ...larger]: readonly [DrawPages, ...DrawPages[]]): PageItems {
  let pages = smallest();
  if (pages.length > 1) return pages;
  for (const draw of larger) {
    const next = draw();
    if (next.length > 1) break;
    pages = next;
  }
  return pages;
}

type PageItems = readonly (readonly Item[])[];
type DrawPages = () => PageItems;

interface ChosenProblem {
  readonly words: string;
  readonly lines: readonly SheetLine[];
}

function chosenLines({ problems, report, messages }: ChildSheetInput): readonly ChosenProblem[] {
  return problems.flatMap((problem) => {
    const lines = report.sheet.filter((own) => own.problem === problem);
    return lines.length === 0 ? [] : [{ words: describeProblem(problem, messages.language.messages), lines }];
  });
}

/** Doses in two columns with lines to sign on, and lines for more of them down to the foot. */
function drawFronts(
  input: ChildSheetInput,
  { chosen, type }: { readonly chosen: readonly ChosenProblem[]; readonly type: DoseType },
  box: Box,
): PageItems {
  const { language } = input.messages;
  const widthMm = (box.widthMm - gapMm) / columns;
  const shared = shareSentences(
    chosen.flatMap(({ lines }) =>
      lines.map(({ warnings }) =>
        warnings.flatMap((own) =>
          own.type === "basis-swapped" ? [describeDosingWarning(own, language.dosing)] : [],
        ),
      ),
    ),
  );
  const blocks = underHeadings(
    chosen,
    (words) => signHeading(input, words, widthMm),
    (own): Block =>
      doseBlock(input, { own: writeLine(own, input.messages, shared), widthMm, type, corner: signCorner }),
    true,
  );
  return underHeads(
    blocks,
    (page) => (page === 0 ? drawHead(input, box, shared) : drawShortHead(input, box, shared)),
    {
      heightMm: 0,
      draw: (fromMm) =>
        furtherLines(input, { ...box, yMm: fromMm, heightMm: box.yMm + box.heightMm - fromMm }),
    },
  );
}

/** How each dose was worked out, and sizes and signs at the foot. */
function drawBacks(
  input: ChildSheetInput,
  { chosen, sizePt }: { readonly chosen: readonly ChosenProblem[]; readonly sizePt: number },
  box: Box,
): PageItems {
  const { report, messages, typefaces } = input;
  const widthMm = (box.widthMm - gapMm) / columns;
  const shared = shareSentences(
    chosen.flatMap(({ lines }) =>
      lines.map(({ working }) =>
        working.flatMap((step) =>
          step.step === "basis-swapped" ? [describeWorking(step, messages.language.dosing)] : [],
        ),
      ),
    ),
  );
  const worked = chosen.map(({ words, lines }) => ({
    words,
    lines: lines.filter(({ unavailable, working }) => unavailable === undefined && working.length > 0),
  }));
  const blocks = underHeadings(
    worked,
    (words) => headingBlock(typefaces, words, widthMm),
    (own): Block => workingBlock(input, own, { widthMm, shared, sizePt }),
  );
  const foot = lookupFoot(input, { equipment: report.equipment, signs: report.signs, box, sizePt });
  return underHeads(blocks, () => drawShared(input, box, { shared, sizePt }), foot);
}

/** The lines of each problem under its heading, which may stand over them again in the next column. */
function underHeadings(
  chosen: readonly ChosenProblem[],
  headingOf: (words: string) => Block,
  blockOf: (own: SheetLine) => Block,
  isRepeated = false,
): readonly Block[] {
  return chosen.flatMap(({ words, lines }) => {
    const heading = headingOf(words);
    if (lines.length === 0) return [];
    return [
      heading,
      ...lines.map((own, i) => ({ ...blockOf(own), ...(isRepeated && i > 0 ? { under: heading } : {}) })),
    ];
  });
}

/** Pages that each have a head of their own over their columns. */
function underHeads(blocks: readonly Block[], headOf: (page: number) => Head, foot: PageFoot): PageItems {
  const heads: Head[] = [];
  const head = (page: number): Head => {
    heads[page] ??= headOf(page);
    return heads[page];
  };
  const pages = flowPages({ blocks, boxOf: (page) => head(page).rest, foot, columns, gapMm });
  return pages.map((items, page) => [...head(page).items, ...items]);
}

/** A side that nothing was left for: under weights and name, as it may be parted from the others, lines for further doses. */
function furtherSide(input: ChildSheetInput, box: Box): readonly Item[] {
  const { items, rest } = drawShortHead(input, box, new Map());
  return [...items, ...furtherLines(input, rest)];
}

/** Lines for a dose given again and for what was not computed, as many as there is room for. */
function furtherLines(input: ChildSheetInput, { xMm, yMm, widthMm, heightMm }: Box): readonly Item[] {
  const columnMm = (widthMm - gapMm) / columns;
  const heading = signHeading(input, input.messages.childSheet.furtherTitle, columnMm);
  const overMm = 2;
  const rows = Math.floor((heightMm - overMm - heading.heightMm) / blankMm);
  if (rows < 1) return [];
  const blank = blankBlock(columnMm, blankMm);
  return Array.from({ length: columns }, (_, column) => {
    const x = xMm + column * (columnMm + gapMm);
    const top = yMm + overMm;
    return [
      heading.draw(x, top),
      ...Array.from({ length: rows }, (_, i) => blank.draw(x, top + heading.heightMm + i * blankMm)),
    ];
  }).flat();
}
