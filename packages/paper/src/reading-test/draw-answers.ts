import { formatNumber } from "@steelyard/core/units";
import type { Box, Group, Item } from "../drawing/item.ts";
import { hairline } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import type { PaperMessages } from "../messages/paper-messages.ts";
import type { ReadingChild } from "./read-children.ts";

const rowMm = 9;

/** A row for each child: what it is, the line to read, what is right as well, ideal weight and range. */
export function drawAnswers(
  { typefaces, messages }: SheetContext,
  children: readonly ReadingChild[],
  box: Box,
): readonly Item[] {
  const { columns, marking } = messages.readingTest;
  const heads = [
    columns.child,
    columns.length,
    columns.arm,
    columns.line,
    columns.right,
    columns.ideal,
    columns.range,
  ];
  const columnMm = box.widthMm / heads.length;
  const row = (cells: readonly string[], yMm: number, role: "TH" | "TD"): Group =>
    group(
      cells.map((text, j) =>
        group(
          [
            setText(typefaces, text, [box.xMm + (j + 1) * columnMm - 4, yMm], {
              sizePt: role === "TH" ? 7.5 : 11,
              font: role === "TH" || j === 3 ? "bold" : "regular",
              anchor: "end",
            }),
          ],
          { role },
        ),
      ),
      { role: "TR" },
    );
  const top = box.yMm + 5;
  const rows = children.map((child, i) => row(cellsOf(messages, child, i + 1), top + (i + 1) * rowMm, "TD"));
  const rules = children.map((_, i) => {
    const y = top + i * rowMm + 3;
    return line(
      [box.xMm, y],
      [box.xMm + box.widthMm, y],
      i === 0 ? strokes.plain : { colour: hairline, widthMm: 0.15 },
    );
  });
  const end = top + children.length * rowMm + 8;
  const words = setParagraph(typefaces, marking, { at: [box.xMm, end], widthMm: box.widthMm, sizePt: 9.5 });
  return [group([row(heads, top, "TH"), ...rows, ...rules], { role: "Table" }), words.group];
}

function cellsOf(
  { language, readingTest }: PaperMessages,
  child: ReadingChild,
  number: number,
): readonly string[] {
  const { lengthCm, armMm, lineKg, alsoKg, idealKg, low95Kg, high95Kg } = child;
  const written = (value: number): string => formatNumber(value, language.numbers);
  const tenth = (kg: number): string => written(Math.round(kg * 10) / 10);
  return [
    written(number),
    written(lengthCm),
    written(armMm),
    written(lineKg),
    alsoKg.map(written).join(readingTest.between),
    tenth(idealKg),
    `${tenth(low95Kg)}–${tenth(high95Kg)}`,
  ];
}
