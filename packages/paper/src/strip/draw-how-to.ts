import { formatNumber } from "@steelyard/core/units";
import { createFlow, type Flow } from "../drawing/flow.ts";
import type { Box, Item, Point } from "../drawing/item.ts";
import { ink, paperWhite, soft } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import { drawLyingChild } from "../figures/lying-child.ts";
import { cautionText, pageMarks } from "../frame/imprint-lines.ts";
import type { StripInput } from "./strip-input.ts";
import type { StripLayout } from "./strip-layout.ts";

/** The panel from the head line on: what it is, how to use it, how to put it together. Reaches 215 mm at most. */
export function drawHowTo(input: StripInput, layout: StripLayout, box: Box): readonly Item[] {
  const { typefaces, messages } = input;
  const { strip } = messages;
  const flow = createFlow(typefaces, box);
  flow.paragraph(strip.title, { font: "bold", sizePt: 26, role: "H1" });
  flow.paragraph(strip.subtitle, { sizePt: 11, colour: soft });
  const marks = pageMarks(input);
  if (marks.length > 0) flow.paragraph(marks.join(". "), { font: "bold", sizePt: 11 });
  flow.space(3);
  flow.put((yMm) => drawChildBesideStrip(input, { ...box, yMm, heightMm: 46 }));
  flow.space(3);
  flow.paragraph(strip.stepsTitle, { font: "bold", sizePt: 12, role: "H2" });
  flow.space(1);
  for (const [i, step] of strip.steps.entries()) numbered(flow, input, box, i + 1, step);
  flow.space(2);
  const half = (box.widthMm - 8) / 2;
  const left = createFlow(typefaces, { xMm: box.xMm, yMm: flow.yMm, widthMm: half });
  left.paragraph(strip.postureTitle, { font: "bold", sizePt: 10, role: "H2" });
  for (const posture of strip.postures) {
    left.space(0.8);
    left.paragraph(posture, { sizePt: 9 });
  }
  const right = createFlow(typefaces, { xMm: box.xMm + half + 8, yMm: flow.yMm, widthMm: half });
  right.paragraph(strip.notForTitle, { font: "bold", sizePt: 10, role: "H2" });
  right.space(0.8);
  right.paragraph(strip.notFor, { sizePt: 9 });
  right.space(2);
  right.paragraph(cautionText(input), { sizePt: 7, colour: soft, role: "Note" });
  const joined = createFlow(typefaces, {
    ...box,
    yMm: Math.max(left.yMm, right.yMm) + 3,
  });
  if (layout.pages.length > 1) drawAssembly(input, layout, box, joined);
  return [...flow.items, ...left.items, ...right.items, ...joined.items];
}

function numbered(flow: Flow, { typefaces }: StripInput, box: Box, number: number, step: string): void {
  flow.put((yMm) => {
    const own = createFlow(typefaces, { xMm: box.xMm + 8, yMm, widthMm: box.widthMm - 8 });
    own.paragraph(step, { sizePt: 11 });
    return {
      items: [mark(number, [box.xMm + 3, yMm + 2.6], typefaces), ...own.items],
      heightMm: own.yMm - yMm + 1.8,
    };
  });
}

/** A number in a black disc. */
function mark(number: number, [x, y]: Point, typefaces: StripInput["typefaces"]): Item {
  return group([
    { kind: "rectangle", xMm: x - 2.4, yMm: y - 2.4, widthMm: 4.8, heightMm: 4.8, radiusMm: 2.4, fill: ink },
    setText(typefaces, String(number), [x, y + 1.15], {
      font: "bold",
      sizePt: 9,
      anchor: "middle",
      colour: paperWhite,
    }),
  ]);
}

function drawChildBesideStrip(input: StripInput, box: Box): { items: readonly Item[]; heightMm: number } {
  const { typefaces, messages } = input;
  const left = box.xMm + 12;
  const widthMm = Math.min(box.widthMm - 20, 180);
  const lengthMm = widthMm * 0.72;
  const child = drawLyingChild({ at: [left, box.yMm + lengthMm * 0.16], lengthMm });
  const stripTop = child.items.length > 0 ? box.yMm + lengthMm * 0.36 : box.yMm;
  const stripBottom = stripTop + 9;
  const ticks: Item[] = Array.from({ length: 21 }, (_, i) => {
    const x = left + (i * widthMm) / 20;
    return line([x, stripTop], [x, stripTop + (i % 5 === 0 ? 3 : 1.6)], strokes.thin);
  });
  const [heelX, heelY] = child.heel;
  const [armX, armY] = child.arm;
  const arrow = { colour: ink, widthMm: 0.3, dashMm: [1.2, 0.8] };
  const items: Item[] = [
    { kind: "rectangle", xMm: left, yMm: stripTop, widthMm, heightMm: 9, stroke: strokes.plain },
    { kind: "rectangle", xMm: left - 5, yMm: stripTop, widthMm: 5, heightMm: 9, fill: ink },
    ...ticks,
    line([left, box.yMm], [left, stripBottom], strokes.strong),
    ...child.items,
    line([heelX, heelY], [heelX, stripBottom], arrow),
    mark(1, [left - 5, box.yMm + 3], typefaces),
    mark(2, [heelX + 5, stripTop - 4], typefaces),
    mark(3, [armX + 5, armY + 1.5], typefaces),
    mark(4, [heelX - 6, stripTop + 5.6], typefaces),
  ];
  const heightMm = stripBottom - box.yMm + 1;
  return { items: [group(items, { role: "Figure", alt: messages.strip.childAlt })], heightMm };
}

/** How the pages lie over one another, in words and in a row of small sheets. */
function drawAssembly(input: StripInput, layout: StripLayout, box: Box, flow: Flow): void {
  const { typefaces, messages } = input;
  const { pages, joinsCm } = layout;
  flow.paragraph(messages.strip.assemblyTitle, { font: "bold", sizePt: 10, role: "H2" });
  flow.space(1);
  flow.put((yMm) => {
    const step = Math.min((box.widthMm - 4) / pages.length, 24);
    const sheets = pages.map((page, i): Item => {
      const x = box.xMm + i * step;
      const over = 4;
      return group([
        {
          kind: "rectangle",
          xMm: x,
          yMm,
          widthMm: step + (i < pages.length - 1 ? over : 0),
          heightMm: 11,
          stroke: strokes.plain,
          fill: paperWhite,
        },
        ...(i < pages.length - 1
          ? [line([x + step, yMm], [x + step, yMm + 11], { ...strokes.thin, dashMm: [0.8, 0.6] })]
          : []),
        ...(i === 0
          ? [{ kind: "rectangle", xMm: x, yMm, widthMm: 1.6, heightMm: 11, fill: ink } as const]
          : []),
        setText(typefaces, String(i + 1), [x + step / 2 + 1, yMm + 5.6], {
          font: "bold",
          sizePt: 10,
          anchor: "middle",
        }),
        setText(
          typefaces,
          `${formatNumber(page.fromCm, messages.language.numbers)}–${formatNumber(page.toCm, messages.language.numbers)}`,
          [x + step / 2 + 1, yMm + 9.3],
          {
            sizePt: 5.5,
            anchor: "middle",
          },
        ),
      ]);
    });
    return {
      items: [group(sheets, { role: "Figure", alt: messages.strip.assemblyAlt })],
      heightMm: 12.5,
    };
  });
  const firstJoinCm = formatNumber(joinsCm[0] ?? 0, messages.language.numbers);
  flow.paragraph(messages.strip.assembly({ pages: pages.length, firstJoinCm }), { sizePt: 8 });
}
