import type { Item } from "../drawing/item.ts";
import { drawQrCode } from "../drawing/qr-code.ts";
import { fitParagraph } from "../drawing/set-text.ts";
import {
  cautionText,
  fingerprintCodeText,
  formularyWords,
  imprintLines,
  pageMarks,
} from "../frame/imprint-lines.ts";
import { drawProofRuler, proofRulerHalfMm, proofRulerLengthMm } from "../frame/proof-ruler.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import type { DividedSheet } from "./divide-sheet.ts";

/** The code is no larger than on the other papers, mm. */
const largestCodeMm = 19;

/** What every sheet carries, where labels were given up for it: both rulers, imprint, cautions, code. */
export function drawProof(
  context: SheetContext,
  { foot, alongFrom }: DividedSheet["proof"],
  { page, pages }: { readonly page: number; readonly pages: number },
): readonly Item[] {
  const { typefaces, messages, imprint } = context;
  const { printAtFull, measureRulers, pageOf, fingerprintCode } = messages.frame;
  const rulerMm = foot.yMm + foot.heightMm - proofRulerHalfMm;
  const codeMm = Math.min(foot.heightMm, foot.widthMm - proofRulerLengthMm - 2, largestCodeMm);
  const widthMm = foot.widthMm - codeMm - 2;
  const head = [pageOf({ page, pages }), ...pageMarks(context), printAtFull, measureRulers];
  const words = fitParagraph(
    typefaces,
    [
      head.join(" · "),
      [...imprintLines(context), ...formularyWords(context)].join(" · "),
      cautionText(context),
    ].join("\n"),
    {
      at: [foot.xMm, foot.yMm],
      widthMm,
      sizesPt: [6, 5.5, 5, 4.5, 4],
      roomMm: rulerMm - proofRulerHalfMm - foot.yMm,
      role: "Note",
    },
  );
  const box = {
    xMm: foot.xMm + foot.widthMm - codeMm,
    yMm: foot.yMm + foot.heightMm - codeMm,
    widthMm: codeMm,
    heightMm: codeMm,
  };
  return [
    words.group,
    drawProofRuler(context, { axis: "across", at: [foot.xMm, rulerMm] }),
    drawProofRuler(context, { axis: "along", at: alongFrom }),
    drawQrCode({ text: fingerprintCodeText(imprint), box, alt: fingerprintCode }),
  ];
}
