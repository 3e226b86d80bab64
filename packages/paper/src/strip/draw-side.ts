import type { Item } from "../drawing/item.ts";
import { soft } from "../drawing/palette.ts";
import { drawQrCode } from "../drawing/qr-code.ts";
import { breakLines, setText } from "../drawing/set-text.ts";
import { group, pointMm } from "../drawing/shapes.ts";
import { cautionText, fingerprintCodeText, imprintLines } from "../frame/imprint-lines.ts";
import { drawProofRuler, proofRulerHalfMm, proofRulerLengthMm } from "../frame/proof-ruler.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { type StripLayout, sideMm } from "./strip-layout.ts";

const codeMm = 14.5;
/**
 * The column beside the tape that stays on the strip after it is glued: a proof ruler along it, the QR code, and turned
 * upwards what it was made from and the cautions.
 */
export function drawSideBlock(
  context: SheetContext,
  {
    layout,
    topMm,
    bottomMm,
    heading,
  }: { layout: StripLayout; topMm: number; bottomMm: number; heading: string },
): readonly Item[] {
  const { typefaces, messages } = context;
  const left = layout.sideLeftMm;
  const codeTop = bottomMm - proofRulerLengthMm - 2 - codeMm;
  const textBottom = codeTop - 2;
  const widthMm = textBottom - topMm;
  const set = [5.4, 5, 4.6, 4.2, 4].map((sizePt) => {
    const look = { sizePt, widthMm };
    const long = [`${imprintLines(context).map(withoutStop).join(". ")}.`, cautionText(context)];
    const lines = [
      ...breakLines(typefaces, heading, { ...look, font: "bold" }).map((own) => ({
        text: own,
        font: "bold" as const,
      })),
      ...long.flatMap((text) =>
        breakLines(typefaces, text, look).map((own) => ({ text: own, font: "regular" as const })),
      ),
    ];
    return { sizePt, lines, lineMm: sizePt * pointMm * 1.2 };
  });
  // The largest size that the column holds.
  const { sizePt, lines, lineMm } =
    set.find((own) => own.lines.length * own.lineMm <= sideMm - 0.6) ??
    (set[set.length - 1] as (typeof set)[number]);
  const turned = lines.map(({ text, font }, i) =>
    setText(typefaces, text, [left + 1.7 + i * lineMm, textBottom], {
      sizePt,
      font,
      angleDeg: -90,
      colour: soft,
    }),
  );
  const code = { xMm: left, yMm: codeTop, widthMm: codeMm, heightMm: codeMm };
  return [
    group(turned, { role: "P" }),
    drawQrCode({
      text: fingerprintCodeText(context.imprint),
      box: code,
      alt: messages.frame.fingerprintCode,
    }),
    drawProofRuler(context, { axis: "along", at: [left + proofRulerHalfMm + 0.6, bottomMm] }),
  ];
}

function withoutStop(text: string): string {
  return text.replace(/\.$/, "");
}
