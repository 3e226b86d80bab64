import type { ChildReport } from "@steelyard/core/child";
import type { ProblemId } from "@steelyard/core/dosing";
import { formatWeight, writtenKg } from "@steelyard/core/units";
import { describeBodyWarning, describeProblem, describeRests } from "@steelyard/core/wording";
import { createFlow } from "../drawing/flow.ts";
import { type Block, flowColumns, headingBlock } from "../drawing/flow-columns.ts";
import type { Box, Drawing, Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { contentBox, framePage } from "../frame/frame-page.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { givenBlock, lookupBlocksOf, workingBlock } from "./sheet-blocks.ts";

export interface ChildSheetInput extends SheetContext {
  readonly size: PageSize;
  /** Everything computed for the child: the same value that the screen shows. */
  readonly report: ChildReport;
  /** What was measured, in words: "length 136 cm". */
  readonly measured: readonly string[];
  /** Sentences about what was typed that its reader must know. */
  readonly notes?: readonly string[];
  readonly problems: readonly ProblemId[];
}

/**
 * The sheet of one child: measurements, weight and range, the doses of the chosen problems with room for times and
 * signatures, equipment and signs; the working of every dose on the back.
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
 * assert.ok(sheet.pages.length >= 2);
 * ```
 */
export function drawChildSheet(input: ChildSheetInput): Drawing {
  const { size, messages, report, problems, typefaces } = input;
  const { childSheet } = messages;
  const box = contentBox(size);
  const head = drawHead(input, box);
  const front = { ...box, yMm: head.bottomMm, heightMm: box.yMm + box.heightMm - head.bottomMm };
  const chosen = problems.flatMap((problem) => {
    const lines = report.sheet.filter((own) => own.problem === problem);
    return lines.length === 0 ? [] : [{ words: describeProblem(problem, messages.language.messages), lines }];
  });
  const doses: Block[] = chosen.flatMap(({ words, lines }) => [
    headingBlock(typefaces, words, box.widthMm),
    ...lines.map((own) => givenBlock(input, own, box.widthMm)),
  ]);
  const fronts = flowAfter(doses, front, box);
  const half = (box.widthMm - 5) / 2;
  const backs = flowColumns({
    blocks: [
      ...chosen.flatMap(({ words, lines }) => [
        headingBlock(typefaces, words, half),
        ...lines.map((own) => workingBlock(input, own, half)),
      ]),
      headingBlock(typefaces, childSheet.equipmentTitle, half),
      ...lookupBlocksOf(input, report.equipment, half),
      headingBlock(typefaces, childSheet.signsTitle, half),
      ...lookupBlocksOf(input, report.signs, half),
    ],
    box,
    columns: 2,
    gapMm: 5,
  });
  const pages = fronts.length + backs.length;
  return {
    title: childSheet.title,
    language: messages.language.tag,
    pages: [
      ...fronts.map((items, i) =>
        framePage(input, {
          size,
          title: childSheet.title,
          subtitle: childSheet.subtitle,
          page: i + 1,
          pages,
          items: i === 0 ? [...head.items, ...items] : items,
        }),
      ),
      ...backs.map((items, i) =>
        framePage(input, {
          size,
          title: childSheet.workingTitle,
          subtitle: childSheet.workingSubtitle,
          page: fronts.length + i + 1,
          pages,
          items,
        }),
      ),
    ],
  };
}

/** The first page has less room than those after it. */
function flowAfter(blocks: readonly Block[], first: Box, rest: Box): readonly (readonly Item[])[] {
  let height = 0;
  let count = 0;
  for (const [i, block] of blocks.entries()) {
    const next = blocks[i + 1];
    const needed = block.heightMm + (block.leads && next !== undefined ? next.heightMm : 0);
    if (height + needed > first.heightMm) break;
    height += block.heightMm;
    count += 1;
  }
  const own = flowColumns({ blocks: blocks.slice(0, count), box: first, columns: 1, gapMm: 0 });
  const others = blocks.slice(count);
  return others.length === 0
    ? own
    : [...own, ...flowColumns({ blocks: others, box: rest, columns: 1, gapMm: 0 })];
}

function drawHead(
  input: ChildSheetInput,
  box: Box,
): { readonly items: readonly Item[]; readonly bottomMm: number } {
  const { typefaces, messages, report, measured, notes = [] } = input;
  const { childSheet } = messages;
  const { totalKg, low95Kg, high95Kg, idealKg, rests } = report.weight;
  const right = box.xMm + box.widthMm;
  const middle = box.xMm + box.widthMm * 0.55;
  const blank = (words: string, from: number, to: number): Item => {
    const text = setText(typefaces, words, [from, box.yMm + 4], { sizePt: 8, colour: soft });
    return group([text, line([from + text.widthMm + 2, box.yMm + 4.6], [to, box.yMm + 4.6], strokes.thin)]);
  };
  const big = (kg: number, words: string, more: string, x: number): Item[] => [
    setText(typefaces, formatWeight(kg, messages.language.numbers), [x, box.yMm + 16], {
      font: "bold",
      sizePt: 24,
    }),
    setText(typefaces, words, [x, box.yMm + 21], { font: "bold", sizePt: 9 }),
    ...(more === "" ? [] : [setText(typefaces, more, [x, box.yMm + 25.4], { sizePt: 9 })]),
  ];
  const isScale = rests.includes("scaleKg");
  const range = isScale
    ? ""
    : childSheet.range({
        low: formatWeight(writtenKg(low95Kg), messages.language.numbers),
        high: formatWeight(writtenKg(high95Kg), messages.language.numbers),
      });
  const flow = createFlow(typefaces, { xMm: box.xMm, yMm: box.yMm + 28, widthMm: box.widthMm });
  flow.paragraph(`${measured.join(", ")}. ${describeRests(rests, messages.language.messages)}`, {
    sizePt: 9,
  });
  const told = [
    ...notes,
    ...report.warnings.map((warning) => describeBodyWarning(warning, messages.language.messages)),
  ];
  if (told.length > 0) flow.paragraph(told.join(" "), { sizePt: 8, font: "bold" });
  flow.space(2);
  return {
    items: [
      blank(childSheet.name, box.xMm, middle - 5),
      blank(childSheet.weighed, middle, right),
      ...big(writtenKg(totalKg, { measured: isScale }), childSheet.total, range, box.xMm),
      ...(idealKg === undefined ? [] : big(writtenKg(idealKg), childSheet.ideal, "", middle)),
      ...flow.items,
    ],
    bottomMm: flow.yMm,
  };
}
