import { formatNumber } from "@steelyard/core/units";
import type { Item, Point } from "../drawing/item.ts";
import { ink, paperWhite } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line, polyline, strokes } from "../drawing/shapes.ts";
import { unprintableMm } from "../frame/page-size.ts";
import { drawProofRuler, proofRulerHalfMm, proofRulerLengthMm } from "../frame/proof-ruler.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { overlapMm, rulerMm, type StripLayout } from "./strip-layout.ts";

interface PageOfStrip {
  readonly layout: StripLayout;
  readonly index: number;
}

/** What stands over the stretch: the head end on the first page, a band to cut off on the others. */
export function drawHeadBand(context: SheetContext, given: PageOfStrip): readonly Item[] {
  return given.index === 0 ? drawHeadEnd(context, given) : drawJoinBand(context, given);
}

/** Solid black up to the head line, as nothing else on the strip is: the crown goes to its edge. */
function drawHeadEnd({ typefaces, messages }: SheetContext, { layout }: PageOfStrip): readonly Item[] {
  const { topMm, sideLeftMm, rightMm } = layout;
  const heightMm = topMm - unprintableMm;
  const widthMm = rightMm - sideLeftMm;
  const middle = sideLeftMm + widthMm / 2;
  const big = heightMm > 20 ? 26 : 17;
  const y = topMm - heightMm / 2 + big * 0.12;
  const notch = 4;
  return [
    { kind: "rectangle", xMm: sideLeftMm, yMm: unprintableMm, widthMm, heightMm, fill: ink },
    setText(typefaces, messages.strip.headLine, [middle, y], {
      font: "bold",
      sizePt: Math.min(
        big,
        (widthMm - 24) / typefaces.widthMm(messages.strip.headLine, { font: "bold", sizePt: 1 }),
      ),
      anchor: "middle",
      colour: paperWhite,
    }),
    // White arrow heads that point at the line from both ends.
    ...[sideLeftMm + 7, rightMm - 7].map((x) =>
      polyline(
        [
          [x - notch, topMm - 6.5],
          [x + notch, topMm - 6.5],
          [x, topMm - 1],
        ],
        { closed: true, fill: paperWhite },
      ),
    ),
  ];
}

function drawJoinBand(
  { typefaces, messages }: SheetContext,
  { layout, index }: PageOfStrip,
): readonly Item[] {
  const { topMm, sideLeftMm, rightMm, pages } = layout;
  const page = pages[index] as StripLayout["pages"][number];
  const { strip } = messages;
  const section = strip.section({
    page: index + 1,
    pages: pages.length,
    fromCm: formatNumber(page.fromCm, messages.language.numbers),
    toCm: formatNumber(page.toCm, messages.language.numbers),
  });
  const widthMm = rightMm - sideLeftMm;
  const how = setParagraph(
    typefaces,
    strip.cutAndJoin({ atCm: formatNumber(page.fromCm, messages.language.numbers), page: index }),
    {
      at: [sideLeftMm + widthMm * 0.44, unprintableMm + 0.2],
      widthMm: widthMm * 0.56,
      sizePt: 7,
    },
  );
  return [
    group([setText(typefaces, section, [sideLeftMm, unprintableMm + 4.2], { font: "bold", sizePt: 11 })], {
      role: "H2",
    }),
    drawHeadMark(typefaces, strip.headEnd, [sideLeftMm, unprintableMm + 8.4]),
    how.group,
    line([sideLeftMm, topMm], [rightMm, topMm], strokes.plain),
    ...drawCrosses(layout, topMm),
  ];
}

/** An arrow head towards the head of the strip, so that a page glued upside down is seen. */
function drawHeadMark(typefaces: SheetContext["typefaces"], words: string, [x, y]: Point): Item {
  return group([
    polyline(
      [
        [x, y],
        [x + 3.6, y],
        [x + 1.8, y - 2.6],
      ],
      { closed: true, fill: ink },
    ),
    setText(typefaces, words, [x + 5, y - 0.1], { sizePt: 7 }),
  ]);
}

/** What lies under the stretch: the join with its overlap, the proof ruler across, what to do. */
export function drawFootBand(context: SheetContext, { layout, index }: PageOfStrip): readonly Item[] {
  const { typefaces, messages } = context;
  const { topMm, rulerLeftMm, sideLeftMm, rightMm, pages } = layout;
  const page = pages[index] as StripLayout["pages"][number];
  const joinMm = topMm + (page.toCm - page.fromCm) * 10;
  const isLast = index === pages.length - 1;
  const rulerMiddle = joinMm + (isLast ? 2 : overlapMm) + 1.5 + proofRulerHalfMm + (isLast ? 6 : 1.5);
  const left = rulerLeftMm + rulerMm;
  const textLeft = left + proofRulerLengthMm + 5;
  const { printAtFull, measureRulers } = messages.frame;
  const words = setParagraph(typefaces, `${printAtFull} ${measureRulers}`, {
    at: [textLeft, rulerMiddle - 4.8],
    widthMm: rightMm - textLeft,
    sizePt: 6.5,
    font: "bold",
  });
  const next = setParagraph(typefaces, messages.strip.glueNext({ page: index + 2 }), {
    at: [textLeft, rulerMiddle - 4.6 + words.heightMm],
    widthMm: rightMm - textLeft,
    sizePt: 6.5,
  });
  return [
    line([sideLeftMm, joinMm], [rightMm, joinMm], isLast ? strokes.heavy : strokes.plain),
    ...(isLast
      ? [
          setText(typefaces, messages.strip.footEnd, [rightMm, joinMm + 5], {
            font: "bold",
            sizePt: 11,
            anchor: "end",
          }),
        ]
      : [...drawCrosses(layout, joinMm), next.group]),
    drawProofRuler(context, { axis: "across", at: [left, rulerMiddle] }),
    words.group,
  ];
}

/** Registration crosses on a join, at the outer edges of the strip, on both pages at the same place. */
function drawCrosses({ sideLeftMm, rightMm }: StripLayout, yMm: number): readonly Item[] {
  return [sideLeftMm + crossInMm, rightMm - crossInMm].map((x) =>
    group([
      line([x, yMm - crossArmMm], [x, yMm + crossArmMm], strokes.plain),
      line([x - crossArmMm, yMm], [x + crossArmMm, yMm], strokes.strong),
    ]),
  );
}

const crossInMm = 3.5;
const crossArmMm = 3;
