import type { Item, Page, Typefaces } from "@steelyard/paper";
import type { StudyFlow } from "../../import/index.ts";
import type { ReportWords } from "../report-words.ts";

const WIDTH_MM = 170;
const BOX_MM = 62;

/** The flow diagram: rows read, left out by reason, compared, and served by each method. */
export function drawFlow({
  flow,
  served,
  typefaces,
  words,
}: {
  flow: StudyFlow;
  served: readonly { readonly name: string; readonly children: number }[];
  typefaces: Typefaces;
  words: ReportWords;
}): Page {
  const items: Item[] = [];
  const text = (content: string, xMm: number, yMm: number, bold = false): void => {
    const font = bold ? "bold" : "regular";
    items.push({
      kind: "text",
      text: content,
      at: [xMm, yMm],
      anchor: "start",
      font,
      sizePt: 9,
      colour: "#000000",
      widthMm: typefaces.widthMm(content, { font, sizePt: 9 }),
    });
  };
  const box = (xMm: number, yMm: number, lines: readonly string[], widthMm = BOX_MM): number => {
    const heightMm = 4 + 5 * lines.length;
    items.push({
      kind: "rectangle",
      xMm,
      yMm,
      widthMm,
      heightMm,
      stroke: { colour: "#000000", widthMm: 0.3 },
    });
    for (const [i, own] of lines.entries()) text(own, xMm + 3, yMm + 5.6 + 5 * i, i === 0);
    return heightMm;
  };
  const line = (from: readonly [number, number], to: readonly [number, number]): void => {
    items.push({ kind: "line", from, to, stroke: { colour: "#000000", widthMm: 0.3 } });
  };
  const x = 4;
  let y = 3;
  y += box(x, y, [words.rowsRead(flow.read)]);
  const reasons = flow.leftOut.map(({ fate, rows }) => `${words.fate(fate)}: ${words.count(rows)}`);
  const leftOut = flow.read - flow.included;
  const sideMm = 4 + 5 * (1 + reasons.length);
  if (leftOut > 0) {
    box(x + BOX_MM + 22, y + 4, [words.leftOut(leftOut), ...reasons], 78);
    line([x + BOX_MM / 2, y + 4 + sideMm / 2], [x + BOX_MM + 22, y + 4 + sideMm / 2]);
  }
  const next = y + (leftOut > 0 ? sideMm + 8 : 8);
  line([x + BOX_MM / 2, y], [x + BOX_MM / 2, next]);
  y = next + box(x, next, [words.compared(flow.included)]);
  line([x + BOX_MM / 2, y], [x + BOX_MM / 2, y + 6]);
  y += 6;
  y += box(
    x,
    y,
    [words.servedBy, ...served.map(({ name, children }) => `${name}: ${words.count(children)}`)],
    WIDTH_MM - 2 * x,
  );
  return { widthMm: WIDTH_MM, heightMm: y + 3, label: words.flowTitle, items };
}
