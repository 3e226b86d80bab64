import type { ChildReport } from "@steelyard/core/child";
import type { DoseLine, ProblemId } from "@steelyard/core/dosing";
import { formatQuantity, formatWeight, type NumberStyle, writeLabel, writtenKg } from "@steelyard/core/units";
import type { Box, Drawing, Item, Page } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { fitParagraph, setParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import { contentBox, drawWatermark, framePage } from "../frame/frame-page.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { divideSheet } from "./divide-sheet.ts";
import { drawProof } from "./draw-proof.ts";
import { classBandMm, drawClassBand, labelClassOf } from "./label-class.ts";
import type { LabelSheet } from "./label-sheet.ts";

export interface LabelsInput extends SheetContext {
  readonly sheet: LabelSheet;
  readonly report: ChildReport;
  readonly problems: readonly ProblemId[];
  /** The class colours of ISO 26825 at the left of each label, and the class in words; none when absent. */
  readonly classColours?: boolean;
}

/**
 * Syringe labels for the doses of the chosen problems, black on white and text first, on a common label sheet, after a framed page for the
 * first print. Every sheet gives up a few labels at its foot and in its last column to the proof rulers, the imprint and the cautions.
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
 * import { createImprint, createTypefaces, drawLabels, ENGLISH_PAPER, labelSheetOf } from "@steelyard/paper";
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
 * const problems = ["anaphylaxis"] as const;
 * const sheet = labelSheetOf("70x37");
 * assert.ok(sheet.ok);
 * const labels = drawLabels({ ...context, sheet: sheet.value, report: report.value, problems });
 * assert.equal(labels.pages.length, 2);
 * ```
 */
export function drawLabels(input: LabelsInput): Drawing {
  const { sheet, report, problems, messages, typefaces } = input;
  const { labels } = messages;
  const lines = problems.flatMap((problem) =>
    report.sheet.flatMap((own) =>
      own.problem === problem && own.unavailable === undefined && isDrawnUp(own) ? [own] : [],
    ),
  );
  const { doses, proof } = divideSheet(sheet);
  const count = Math.ceil(lines.length / doses.length);
  const size = { name: sheet.id, widthMm: sheet.widthMm, heightMm: sheet.heightMm };
  const box = contentBox(size);
  const words = setParagraph(typefaces, lines.length === 0 ? labels.noLabels : labels.how, {
    at: [box.xMm, box.yMm],
    widthMm: box.widthMm,
    sizePt: 11,
  });
  const title = labels.title;
  const first = framePage(input, {
    size,
    title,
    subtitle: labels.subtitle,
    page: 1,
    pages: count + 1,
    items: [words.group],
  });
  const pages = Array.from({ length: count }, (_, page): Page => {
    const own = lines.slice(page * doses.length, (page + 1) * doses.length);
    return {
      widthMm: sheet.widthMm,
      heightMm: sheet.heightMm,
      label: String(page + 2),
      items: [
        ...own.flatMap((dose, i) => {
          const place = doses[i] as Box;
          return [...drawWatermark(input, place), drawLabel(input, dose, place)];
        }),
        ...drawProof(input, proof, { page: page + 2, pages: count + 1 }),
      ],
    };
  });
  return { title, language: messages.language.tag, pages: [first, ...pages] };
}

/** What goes into a syringe: not an energy, and not a fluid that runs from its bag. */
function isDrawnUp({ volume, dose, preparations }: DoseLine): boolean {
  return (volume !== undefined && dose.unit !== "mL") || (preparations ?? []).length > 0;
}

function drawLabel(input: LabelsInput, own: DoseLine, place: Box): Item {
  const { typefaces, messages, imprint, report } = input;
  const { labels, frame } = messages;
  const labelClass = input.classColours ? labelClassOf(own) : undefined;
  const classWords = labelClass === undefined ? "" : `, ${labels.classes[labelClass]}`;
  // Where there are colours, names stand under each other whether or not a class has one.
  const bandMm = input.classColours ? classBandMm + 1.5 : 0;
  const box = { ...place, xMm: place.xMm + bandMm, widthMm: place.widthMm - bandMm };
  const { xMm, yMm, widthMm, heightMm } = box;
  const { rests } = report.weight;
  const [amount, strength] = contentsOf(own, messages.language.numbers);
  const isLow = heightMm < 26;
  const name = fitParagraph(typefaces, own.medicine, {
    ...formularyLanguage(input),
    at: [xMm, yMm],
    widthMm,
    sizesPt: isLow ? [10, 9, 8, 7] : [13, 11, 10, 9, 8],
    roomMm: isLow ? 4.6 : 6,
    font: "bold",
  });
  const dose = fitParagraph(typefaces, amount, {
    at: [xMm, yMm + name.heightMm],
    widthMm,
    sizesPt: isLow ? [9, 8, 7, 6] : [11, 10, 9, 8, 7],
    roomMm: isLow ? 4 : 5,
    font: "bold",
  });
  const of = fitParagraph(typefaces, `${own.use}, ${own.route}${classWords}`, {
    ...(classWords === "" ? formularyLanguage(input) : {}),
    ...(strength === "" ? {} : { lead: `${strength},` }),
    at: [xMm, yMm + name.heightMm + dose.heightMm],
    widthMm,
    sizesPt: isLow ? [6.5, 6, 5.5, 5] : [8, 7, 6.5, 6, 5.5],
    roomMm: isLow ? 5.4 : 8,
  });
  const foot = yMm + heightMm;
  // The weight that this dose goes by: a label that named another one would be checked against the wrong sum.
  const measured = own.basis === "total" && rests.includes("scaleKg");
  const weight = labels.weight({
    kg: formatWeight(writtenKg(own.basisKg, { measured }), messages.language.numbers),
    basis: messages.booklet.basis[own.basis],
  });
  const draft = imprint.signed ? "" : `, ${frame.draftLong}`;
  const third = widthMm * 0.55;
  return group([
    ...(labelClass === undefined ? [] : [drawClassBand(labelClass, place)]),
    name.group,
    dose.group,
    of.group,
    setText(typefaces, `${weight}${draft}`, [xMm, foot - 4.2], { sizePt: 5.5, colour: soft }),
    ...blank(input, labels.drawnUp, xMm, foot - 0.6, xMm + third - 2),
    ...blank(input, labels.by, xMm + third, foot - 0.6, xMm + widthMm),
  ]);
}

function blank(
  { typefaces }: SheetContext,
  words: string,
  fromMm: number,
  yMm: number,
  toMm: number,
): Item[] {
  const text = setText(typefaces, words, [fromMm, yMm], { sizePt: 6, colour: soft });
  return [text, line([fromMm + text.widthMm + 1, yMm + 0.3], [toMm, yMm + 0.3], strokes.thin)];
}

/** What is in the syringe and how strong it is. */
function contentsOf(
  { dose, of, volume, preparations }: DoseLine,
  style: NumberStyle,
): readonly [amount: string, strength: string] {
  const named = of === undefined ? "" : ` ${of}`;
  const [prepared] = preparations ?? [];
  if (prepared !== undefined) {
    const total = formatQuantity({ amount: prepared.totalMl, unit: "mL" }, style);
    return [
      `${formatQuantity(prepared.amount, style)}${named} / ${total}`,
      writeLabel(prepared.concentration, style),
    ];
  }
  const ml = volume === undefined ? "" : ` = ${formatQuantity({ amount: volume.ml, unit: "mL" }, style)}`;
  return [
    `${formatQuantity(dose, style)}${named}${ml}`,
    volume === undefined ? "" : writeLabel(volume.strength, style),
  ];
}
