import type { SheetLine } from "@steelyard/core/dosing";
import { describeWorking } from "@steelyard/core/wording";
import type { SharedSentences } from "../booklet/shared-sentences.ts";
import { headOf } from "../booklet/write-line.ts";
import type { Block } from "../drawing/flow-columns.ts";
import { paragraphHeightMm, setParagraph } from "../drawing/set-text.ts";
import { group } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

/** The steps of one dose, one sentence after another, behind its name; those that many lines share as their mark. */
export function workingBlock(
  context: SheetContext,
  own: SheetLine,
  {
    widthMm,
    shared,
    sizePt,
  }: { readonly widthMm: number; readonly shared: SharedSentences; readonly sizePt: number },
): Block {
  const { typefaces, messages } = context;
  const sentences = own.working.map((step) => describeWorking(step, messages.language.dosing));
  const marks = sentences.flatMap((sentence) => shared.get(sentence) ?? []);
  const steps = sentences.filter((sentence) => !shared.has(sentence)).join(" ");
  const head = [headOf(own), ...new Set(marks)].join(" ");
  const look = { sizePt, widthMm } as const;
  const bold = { ...look, font: "bold", ...formularyLanguage(context) } as const;
  const isShort = typefaces.widthMm(head, { font: "bold", sizePt: look.sizePt }) < widthMm * 0.85;
  const parts = isShort
    ? [{ text: steps, look: { ...look, lead: head, leadLanguage: bold.language } }]
    : [{ text: head, look: bold }, ...(steps === "" ? [] : [{ text: steps, look }])];
  const heights = parts.map((part) => paragraphHeightMm(typefaces, part.text, part.look));
  return {
    heightMm: heights.reduce((sum, height) => sum + height, 0) + 0.5,
    draw: (x, y) => {
      let at = y;
      return group(
        parts.map((part, i) => {
          const set = setParagraph(typefaces, part.text, { ...part.look, at: [x, at] });
          at += heights[i] as number;
          return set.group;
        }),
      );
    },
  };
}
