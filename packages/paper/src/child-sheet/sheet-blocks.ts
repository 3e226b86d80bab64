import type { SheetLine } from "@steelyard/core/dosing";
import type { EquipmentLine } from "@steelyard/core/equipment";
import type { SignLine } from "@steelyard/core/signs";
import {
  describeEquipmentItem,
  describeEquipmentSize,
  describeSign,
  describeSignValue,
  describeWorking,
} from "@steelyard/core/wording";
import { writeLine } from "../booklet/write-line.ts";
import type { Block } from "../drawing/flow-columns.ts";
import { hairline, soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

/** Width of the columns for time, giver and checker, mm. */
const signMm = 66;

/** One dose with room to sign for it. */
export function givenBlock(context: SheetContext, own: SheetLine, widthMm: number): Block {
  const { typefaces, messages } = context;
  const written = writeLine(own, messages);
  const textMm = widthMm - signMm - 4;
  const basis = written.basis === undefined ? "" : ` (${written.basis})`;
  const head = { sizePt: 7.2, colour: soft, widthMm: textMm, ...formularyLanguage(context) } as const;
  const dose = { sizePt: 9.6, font: "bold", widthMm: textMm } as const;
  const note = { sizePt: 6.6, widthMm: textMm } as const;
  const parts = [
    { text: `${written.head}${basis}`, look: head },
    { text: written.dose, look: dose },
    ...(written.notes.length === 0 ? [] : [{ text: written.notes.join(" "), look: note }]),
  ];
  const heights = parts.map(
    ({ text, look }) => setParagraph(typefaces, text, { ...look, at: [0, 0] }).heightMm,
  );
  const heightMm = Math.max(heights.reduce((sum, height) => sum + height, 0) + 1.6, 10.6);
  const { given, by, checked } = messages.childSheet;
  return {
    heightMm,
    draw: (x, y) => {
      let at = y;
      const texts = parts.map(({ text, look }, i) => {
        const set = setParagraph(typefaces, text, { ...look, at: [x, at] });
        at += heights[i] as number;
        return set.group;
      });
      const column = signMm / 3;
      const base = y + 7;
      const blanks = own.unavailable
        ? []
        : [given, by, checked].flatMap((words, i) => {
            const from = x + widthMm - signMm + i * column;
            return [
              line([from, base], [from + column - 3, base], strokes.thin),
              setText(typefaces, words, [from, base + 2.2], { sizePt: 5.5, colour: soft }),
            ];
          });
      const rule = line([x, y + heightMm - 0.6], [x + widthMm, y + heightMm - 0.6], {
        colour: hairline,
        widthMm: 0.12,
      });
      return group([...texts, ...blanks, rule]);
    },
  };
}

/** The steps of one dose, one sentence after another. */
export function workingBlock(context: SheetContext, own: SheetLine, widthMm: number): Block {
  const { typefaces, messages } = context;
  const head = `${own.medicine}, ${own.use}, ${own.route}`;
  const steps = own.working.map((step) => describeWorking(step, messages.language.dosing)).join(" ");
  const look = { sizePt: 6.4, widthMm } as const;
  const headLook = { ...look, font: "bold", ...formularyLanguage(context) } as const;
  const headMm = setParagraph(typefaces, head, { ...headLook, at: [0, 0] }).heightMm;
  const stepsMm = steps === "" ? 0 : setParagraph(typefaces, steps, { ...look, at: [0, 0] }).heightMm;
  return {
    heightMm: headMm + stepsMm + 1.2,
    draw: (x, y) =>
      group([
        setParagraph(typefaces, head, { ...headLook, at: [x, y] }).group,
        ...(steps === "" ? [] : [setParagraph(typefaces, steps, { ...look, at: [x, y + headMm] }).group]),
      ]),
  };
}

/** Sizes and signs, one a row; those that are not known are left out. */
export function lookupBlocksOf(
  context: SheetContext,
  lines: readonly (EquipmentLine | SignLine)[],
  widthMm: number,
): readonly Block[] {
  const { lookup } = context.messages.language;
  return lines.flatMap((own) => {
    if (own.unavailable !== undefined) return [];
    const row =
      "item" in own
        ? ([describeEquipmentItem(own, lookup), describeEquipmentSize(own.item, own, lookup)] as const)
        : ([describeSign(own, lookup), describeSignValue(own, lookup)] as const);
    return [rowBlock(context, row, widthMm)];
  });
}

function rowBlock(
  { typefaces }: SheetContext,
  [name, value]: readonly [string, string],
  widthMm: number,
): Block {
  const share = 0.52;
  const nameLook = { sizePt: 7, widthMm: widthMm * share - 2 } as const;
  const valueLook = { sizePt: 7.4, font: "bold", widthMm: widthMm * (1 - share) } as const;
  const heightMm =
    Math.max(
      setParagraph(typefaces, name, { ...nameLook, at: [0, 0] }).heightMm,
      setParagraph(typefaces, value, { ...valueLook, at: [0, 0] }).heightMm,
    ) + 0.5;
  return {
    heightMm,
    draw: (x, y) =>
      group([
        setParagraph(typefaces, name, { ...nameLook, at: [x, y] }).group,
        setParagraph(typefaces, value, { ...valueLook, at: [x + widthMm * share, y] }).group,
      ]),
  };
}
