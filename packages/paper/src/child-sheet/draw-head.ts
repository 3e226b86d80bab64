import { formatWeight, writtenKg } from "@steelyard/core/units";
import { describeBodyWarning, describeRests } from "@steelyard/core/wording";
import type { SharedSentences } from "../booklet/shared-sentences.ts";
import { createFlow, type Flow } from "../drawing/flow.ts";
import type { Box, Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { fitParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import type { ChildSheetInput } from "./child-sheet-input.ts";

export interface Head {
  readonly items: readonly Item[];
  /** What is left of the page under it. */
  readonly rest: Box;
}

/** Whose sheet it is, the weights with their range, what they rest on, and what many of the lines below have in common. */
export function drawHead(input: ChildSheetInput, box: Box, shared: SharedSentences): Head {
  const { typefaces, messages, report, measured, notes = [] } = input;
  const { childSheet, language } = messages;
  const { low95Kg, high95Kg, rests } = report.weight;
  const range = rests.includes("scaleKg")
    ? ""
    : childSheet.range({
        low: formatWeight(writtenKg(low95Kg), language.numbers),
        high: formatWeight(writtenKg(high95Kg), language.numbers),
      });
  const idealFromMm = box.xMm + box.widthMm * 0.38;
  const baseMm = box.yMm + 8.4;
  const big = (written: string, words: string, more: string, xMm: number, toMm: number): Item[] => {
    const number = setText(typefaces, written, [xMm, baseMm], { font: "bold", sizePt: 22 });
    const after = xMm + number.widthMm + 2;
    const name = (yMm: number): Item =>
      setText(typefaces, words, [after, yMm], { font: "bold", sizePt: 8.4 });
    if (more === "") return [number, name(baseMm)];
    const range = fitParagraph(typefaces, more, {
      at: [after, baseMm - 2.5],
      widthMm: toMm - after - 3,
      sizesPt: [8.4, 7.8, 7.2, 6.6, 6],
      roomMm: 3.8,
    });
    return [number, name(baseMm - 3.8), range.group];
  };
  const { total, ideal } = writtenWeights(input);
  const flow = createFlow(typefaces, { xMm: box.xMm, yMm: box.yMm + 11, widthMm: box.widthMm });
  const told = [...notes, ...report.warnings.map((own) => describeBodyWarning(own, language.messages))];
  const rested = `${measured.join(", ")}. ${describeRests(rests, language.messages)}`;
  flow.paragraph([rested, ...legendOf(shared)].join(" "), { sizePt: 7.4 });
  if (told.length > 0) flow.paragraph(told.join(" "), { sizePt: 8, font: "bold" });
  const items = [
    ...big(total, childSheet.total, range, box.xMm, idealFromMm),
    ...(ideal === undefined ? [] : big(ideal, childSheet.ideal, "", idealFromMm, namesFromMm(box))),
    ...drawNames(input, box),
  ];
  return finish(flow, { items, box });
}

/** The head of a further sheet, which may be parted from the first. */
export function drawShortHead(input: ChildSheetInput, box: Box, shared: SharedSentences): Head {
  const { typefaces, messages } = input;
  const { total, ideal } = writtenWeights(input);
  const weights = [
    `${total} ${messages.childSheet.total}`,
    ...(ideal === undefined ? [] : [`${ideal} ${messages.childSheet.ideal}`]),
  ];
  const words = setText(typefaces, weights.join(" · "), [box.xMm, box.yMm + 8.4], {
    font: "bold",
    sizePt: 11,
  });
  const flow = createFlow(typefaces, { xMm: box.xMm, yMm: box.yMm + 11, widthMm: box.widthMm });
  if (shared.size > 0) flow.paragraph(legendOf(shared).join(" "), { sizePt: 7.4 });
  return finish(flow, { items: [words, ...drawNames(input, box)], box });
}

/** What many lines of a side have in common, over them. */
export function drawShared(
  input: ChildSheetInput,
  box: Box,
  { shared, sizePt }: { readonly shared: SharedSentences; readonly sizePt: number },
): Head {
  const flow = createFlow(input.typefaces, box);
  if (shared.size > 0) flow.paragraph(legendOf(shared).join(" "), { sizePt: sizePt + 0.4 });
  return finish(flow, { items: [], box });
}

/** "* Lighter than ideal ...", of each mark. */
function legendOf(shared: SharedSentences): readonly string[] {
  return [...shared].map(([sentence, mark]) => `${mark}\u00a0${sentence}`);
}

function finish(flow: Flow, { items, box }: { readonly items: readonly Item[]; readonly box: Box }): Head {
  if (flow.yMm > box.yMm) flow.space(1);
  const yMm = flow.yMm;
  return { items: [...items, ...flow.items], rest: { ...box, yMm, heightMm: box.yMm + box.heightMm - yMm } };
}

function writtenWeights({ report, messages }: ChildSheetInput): {
  readonly total: string;
  readonly ideal?: string;
} {
  const { totalKg, idealKg, rests } = report.weight;
  const { numbers } = messages.language;
  return {
    total: formatWeight(writtenKg(totalKg, { measured: rests.includes("scaleKg") }), numbers),
    ...(idealKg === undefined ? {} : { ideal: formatWeight(writtenKg(idealKg), numbers) }),
  };
}

/** Where the lines for name and scale weight begin, beside the weights. */
function namesFromMm({ xMm, widthMm }: Box): number {
  return xMm + widthMm * 0.67;
}

/** At the right, the lines for the name, and for the weight once the child is on a scale. */
function drawNames({ typefaces, messages }: ChildSheetInput, box: Box): readonly Item[] {
  const { name, weighed } = messages.childSheet;
  const from = namesFromMm(box);
  return [name, weighed].map((words, i): Item => {
    const y = box.yMm + 2.6 + i * 6.4;
    const text = setText(typefaces, words, [from, y], { sizePt: 7.2, colour: soft });
    return group([
      text,
      line([from + text.widthMm + 1.5, y + 0.5], [box.xMm + box.widthMm, y + 0.5], strokes.thin),
    ]);
  });
}
