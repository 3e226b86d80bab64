import { computeChild } from "@steelyard/core/child";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import {
  checkDrawing,
  type Drawing,
  drawArmBand,
  drawBooklet,
  drawChildSheet,
  drawGuide,
  drawLabels,
  drawReadingTest,
  drawStrip,
  drawWeightGrid,
  type Item,
  labelSheets,
  type Page,
  pageSizes,
  type SheetContext,
} from "@steelyard/paper";
import { FRENCH_PAPER } from "@steelyard/paper/french";
import { describe, expect, it } from "vitest";
import { cautionText, imprintLines } from "../src/frame/imprint-lines.ts";
import { longContext, sampleContext } from "./support/sample-context.ts";

const formulary = draftFormulary;
const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
const computed = computeChild({ measurements, formulary });
if (!computed.ok) throw new Error(computed.error.type);
const report = computed.value;
const measured = ["136 cm", "190 mm"];
const problems = (draftFormulary.problemOrder ?? []).filter((id) => id !== "fluids");

function strip(context: SheetContext, medium: Parameters<typeof drawStrip>[0]["medium"]): Drawing {
  const drawing = drawStrip({ ...context, medium });
  if (!drawing.ok) throw new Error("too narrow");
  return drawing.value;
}

type Draw = (context: SheetContext) => Drawing;
const sheets = Object.entries(pageSizes).flatMap(([name, size]): (readonly [string, Draw])[] => [
  [`strip on ${name}`, (context) => strip(context, { sheet: size })],
  [`arm band on ${name}`, (context) => drawArmBand({ ...context, size })],
  [`grid on ${name}`, (context) => drawWeightGrid({ ...context, size, girths: "arm" })],
  [`grid with waist on ${name}`, (context) => drawWeightGrid({ ...context, size, girths: "arm-and-waist" })],
  [
    `booklet on ${name}`,
    (context) =>
      drawBooklet({
        ...context,
        size,
        formulary,
        problems: name === "letter" ? ["anaphylaxis", "seizure"] : ["anaphylaxis"],
      }),
  ],
  [`child sheet on ${name}`, (context) => drawChildSheet({ ...context, size, report, measured, problems })],
  [`guide on ${name}`, (context) => drawGuide({ ...context, size })],
  [`reading test on ${name}`, (context) => drawReadingTest({ ...context, size })],
]);
const papers: readonly (readonly [string, Draw])[] = [
  ...sheets,
  ["strip on a roll", (context) => strip(context, { rollWidthMm: 297 })],
  ...labelSheets.map((sheet): readonly [string, Draw] => [
    `labels of ${sheet.id}`,
    (context) => drawLabels({ ...context, sheet, report, problems }),
  ]),
];

const plain = (text: string): string => text.replaceAll(/[\s\u00a0\u202f]+/g, " ");

function allOf<T>(items: readonly Item[], pick: (item: Item) => readonly T[]): readonly T[] {
  return items.flatMap((item) => [...pick(item), ...(item.kind === "group" ? allOf(item.items, pick) : [])]);
}

/** What a page lacks of all that every page must carry. */
function lackOf({ items }: Page, context: SheetContext): readonly string[] {
  const { messages, imprint } = context;
  const { frame, language } = messages;
  const words = plain(allOf(items, (item) => (item.kind === "text" ? [item.text] : [])).join(" "));
  const figures = new Set(allOf(items, (item) => (item.kind === "group" && item.alt ? [item.alt] : [])));
  const sentences = [
    frame.printAtFull,
    frame.measureRulers,
    cautionText(context),
    ...imprintLines(context),
    language.unreviewed ?? "",
  ];
  return [
    ...[frame.rulerAcross, frame.rulerAlong, frame.fingerprintCode].filter((alt) => !figures.has(alt)),
    ...sentences.map(plain).filter((sentence) => !words.includes(sentence)),
    ...(imprint.signed || words.includes(plain(frame.draftLong)) ? [] : [frame.draftLong]),
  ];
}

const contexts = [
  { is: "unsigned, in English", context: await sampleContext({ formulary }) },
  {
    is: "signed, with names as long as large hospitals have them",
    context: await longContext({ signed: true }),
  },
  {
    is: "in French with the same names, its calibration unsigned",
    context: await longContext({ signed: false, messages: FRENCH_PAPER }),
  },
];

// A booklet has a page for every weight, and its frame is that of the others: in French with long names and in English on every sheet, in English with long names on one.
const runs = papers.flatMap(([name, draw]) =>
  contexts
    .filter((_, i) => i !== 1 || !/^booklet on (?:a3|letter)$/.test(name))
    .map((own) => ({ name, draw, ...own })),
);

describe("every page", () => {
  it.each(runs)(
    "of the $name, $is, has both rulers, 100 %, imprint, code, cautions and marks, and no text on another or off its box",
    ({ draw, context }) => {
      const drawing = draw(context);
      expect(drawing.pages.length).toBeGreaterThan(0);
      const lacking = drawing.pages.flatMap((page) =>
        lackOf(page, context).map((lack) => `${page.label}: ${lack}`),
      );
      expect(lacking).toEqual([]);
      expect(checkDrawing(drawing, context.typefaces)).toEqual([]);
    },
  );
});
