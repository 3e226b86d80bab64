import type { Box, Item, Page } from "../drawing/item.ts";
import { faint, soft, watermark } from "../drawing/palette.ts";
import { drawQrCode } from "../drawing/qr-code.ts";
import { fitParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import {
  cautionText,
  fingerprintCodeText,
  formularyWords,
  imprintLines,
  pageMarks,
} from "./imprint-lines.ts";
import { type PageSize, unprintableMm } from "./page-size.ts";
import { drawProofRuler, proofRulerHalfMm, proofRulerLengthMm } from "./proof-ruler.ts";
import type { SheetContext } from "./sheet-context.ts";

const headMm = 17;
const footMm = 20;
const cautionsMm = 6.5;
const columnMm = 2 * proofRulerHalfMm + 1.5;
const codeMm = 19;

/** The part of the page that is the paper's own: inside the rulers, under the title, over the imprint. */
export function contentBox({ widthMm, heightMm }: PageSize): Box {
  const xMm = unprintableMm + columnMm;
  const yMm = unprintableMm + headMm;
  return {
    xMm,
    yMm,
    widthMm: widthMm - unprintableMm - xMm,
    heightMm: heightMm - unprintableMm - footMm - cautionsMm - 2 - yMm,
  };
}

export interface FramedPage {
  readonly size: PageSize;
  readonly title: string;
  readonly subtitle?: string;
  readonly page: number;
  readonly pages: number;
  /** What stands in `contentBox(size)`. */
  readonly items: readonly Item[];
}

/** A page with all that every page carries: title, proof rulers on both axes, imprint, QR code, cautions, watermark. */
export function framePage(context: SheetContext, framed: FramedPage): Page {
  const { size, items, page } = framed;
  const { widthMm, heightMm } = size;
  return {
    widthMm,
    heightMm,
    label: String(page),
    items: [
      ...drawWatermark(context, { xMm: 0, yMm: 0, widthMm, heightMm }),
      ...drawHead(context, framed),
      ...items,
      ...drawFoot(context, size),
    ],
  };
}

/** Across the middle of a box while the paper is unsigned; nothing once it is signed. */
export function drawWatermark({ imprint, messages, typefaces }: SheetContext, box: Box): readonly Item[] {
  if (imprint.signed) return [];
  const text = messages.frame.draftLong;
  const at = [box.xMm + box.widthMm / 2, box.yMm + box.heightMm / 2] as const;
  const diagonal = Math.hypot(box.widthMm, box.heightMm);
  const angleDeg = (-Math.atan2(box.heightMm, box.widthMm) * 180) / Math.PI;
  const look = { font: "bold", colour: watermark, anchor: "middle", angleDeg } as const;
  // As long as most of the diagonal.
  const sizePt = (diagonal * 0.6) / typefaces.widthMm(text, { font: "bold", sizePt: 1 });
  return [group([setText(typefaces, text, at, { ...look, sizePt })], { under: true })];
}

function drawHead({ messages, typefaces, imprint }: SheetContext, framed: FramedPage): readonly Item[] {
  const { size, title, subtitle, page, pages } = framed;
  const box = contentBox(size);
  const right = box.xMm + box.widthMm;
  const top = unprintableMm;
  const marks = pageMarks({ imprint, messages });
  const note = [messages.frame.pageOf({ page, pages }), ...marks];
  const stepMm = marks.length > 1 ? 4.2 : 5;
  const noteMm = Math.max(...marks.map((text) => typefaces.widthMm(text, { font: "bold", sizePt: 9 })), 0);
  const roomMm = box.widthMm - noteMm - 3;
  // A long subtitle is set smaller rather than on the marks beside it.
  const subtitlePt =
    [9, 8.5, 8, 7.5].find(
      (sizePt) => typefaces.widthMm(subtitle ?? "", { font: "regular", sizePt }) <= roomMm,
    ) ?? 7;
  return [
    group([setText(typefaces, title, [box.xMm, top + 6.5], { font: "bold", sizePt: 17 })], { role: "H1" }),
    ...(subtitle === undefined
      ? []
      : [setText(typefaces, subtitle, [box.xMm, top + 12], { sizePt: subtitlePt, colour: soft })]),
    ...note.map((text, i) =>
      setText(typefaces, text, [right, top + stepMm * (1 + i)], {
        sizePt: 9,
        anchor: "end",
        font: i === 0 ? "regular" : "bold",
      }),
    ),
    line([box.xMm, top + headMm - 2.5], [right, top + headMm - 2.5], strokes.strong),
  ];
}

function drawFoot(context: SheetContext, size: PageSize): readonly Item[] {
  const { typefaces, messages } = context;
  const box = contentBox(size);
  const right = box.xMm + box.widthMm;
  const top = size.heightMm - unprintableMm - footMm;
  const cautions = fitParagraph(typefaces, cautionText(context), {
    at: [box.xMm, top - cautionsMm],
    widthMm: box.widthMm,
    sizesPt: [6.5, 6, 5.5, 5],
    roomMm: cautionsMm,
    role: "Note",
  });
  const textLeft = box.xMm + proofRulerLengthMm + 5;
  const textMm = right - codeMm - 1 - textLeft;
  const rulerMm = size.heightMm - unprintableMm - proofRulerHalfMm;
  const code = {
    xMm: right - codeMm,
    yMm: size.heightMm - unprintableMm - codeMm,
    widthMm: codeMm,
    heightMm: codeMm,
  };
  const { printAtFull, measureRulers, fingerprintCode } = messages.frame;
  // One line over the ruler, and as many sentences as there are beside it, at the largest size at which long names still fit.
  const how = fitParagraph(typefaces, `${printAtFull} ${measureRulers}`, {
    at: [box.xMm, rulerMm - proofRulerHalfMm - 4.2],
    widthMm: proofRulerLengthMm + 2,
    sizesPt: [6.5, 6, 5.5, 5],
    roomMm: 3,
    font: "bold",
  });
  const imprint = fitParagraph(typefaces, [...imprintLines(context), ...formularyWords(context)].join("\n"), {
    at: [textLeft, top + 0.8],
    widthMm: textMm,
    sizesPt: [6, 5.5, 5, 4.5],
    roomMm: footMm - 0.8,
    colour: soft,
  });
  return [
    line([box.xMm, top - cautionsMm - 0.8], [right, top - cautionsMm - 0.8], {
      colour: faint,
      widthMm: 0.15,
    }),
    cautions.group,
    how.group,
    imprint.group,
    drawProofRuler(context, { axis: "across", at: [box.xMm, rulerMm] }),
    drawProofRuler(context, { axis: "along", at: [unprintableMm + proofRulerHalfMm, rulerMm] }),
    drawQrCode({ text: fingerprintCodeText(context.imprint), box: code, alt: fingerprintCode }),
  ];
}
