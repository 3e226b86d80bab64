import type { NumberStyle } from "@steelyard/core/units";
import type { Box, Group, Item } from "../drawing/item.ts";
import { hairline, ink, shade, soft } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import { type GridCell, writeCell } from "./grid-cell.ts";

export interface TableRow {
  /** Figures at the head of the row, one a column of heads. */
  readonly heads: readonly string[];
  readonly cells: readonly GridCell[];
  readonly idealKg: number;
}

export interface TableInput {
  readonly typefaces: Typefaces;
  readonly box: Box;
  readonly alt: string;
  readonly numbers: NumberStyle;
  readonly columnHeads: readonly string[];
  readonly rows: readonly TableRow[];
  readonly headMm: number;
  readonly rowMm: number;
  readonly sizePt: number;
  /** Every how many rows a strong rule helps the eye. */
  readonly ruleEvery: number;
}

/** A table of weights: heads at the left and the top, grey where the model extrapolates, a frame round the cell nearest to ideal. */
export function drawTable(input: TableInput): Group {
  const { box, columnHeads, rows, headMm, rowMm, sizePt, typefaces, ruleEvery, alt, numbers } = input;
  const headCount = rows[0]?.heads.length ?? 0;
  const left = box.xMm + headCount * headMm;
  const columnMm = (box.widthMm - headCount * headMm) / columnHeads.length;
  const drop = rowMm / 2 + sizePt * 0.118;
  const top = box.yMm + rowMm;
  const heads = columnHeads.map((text, j) =>
    cell("TH", [
      setText(typefaces, text, [left + (j + 0.5) * columnMm, box.yMm + drop], {
        sizePt,
        font: "bold",
        anchor: "middle",
      }),
    ]),
  );
  // Over the greys of their neighbours.
  const frames: Item[] = [];
  const body = rows.map((row, i) => {
    const y = top + i * rowMm;
    const nearest = nearestIdeal(row);
    const rowHeads = row.heads.map((text, k) =>
      cell("TH", [
        setText(typefaces, text, [box.xMm + (k + 1) * headMm - 2, y + drop], {
          sizePt: sizePt + 0.5,
          font: k === 0 ? "bold" : "regular",
          anchor: "end",
        }),
      ]),
    );
    const cells = row.cells.map(({ kg, isBeyond }, j) => {
      const x = left + j * columnMm;
      const place = { xMm: x, yMm: y, widthMm: columnMm, heightMm: rowMm };
      const items: Item[] = [];
      if (isBeyond) items.push({ kind: "rectangle", ...place, fill: shade });
      if (j === nearest) frames.push({ kind: "rectangle", ...place, stroke: { colour: ink, widthMm: 0.35 } });
      if (kg !== undefined) {
        items.push(
          setText(typefaces, writeCell(kg, numbers), [x + columnMm / 2, y + drop], {
            sizePt,
            anchor: "middle",
            colour: isBeyond ? soft : ink,
            font: j === nearest ? "bold" : "regular",
          }),
        );
      }
      return items.length === 0 ? undefined : cell("TD", items);
    });
    return group([...rowHeads, ...cells.filter((own) => own !== undefined)], { role: "TR" });
  });
  const right = box.xMm + box.widthMm;
  const rules = rows.map((_, i) => {
    const strong = i % ruleEvery === 0;
    const y = top + i * rowMm;
    return line([box.xMm, y], [right, y], { colour: strong ? ink : hairline, widthMm: strong ? 0.2 : 0.1 });
  });
  const end = top + rows.length * rowMm;
  return group(
    [
      group(heads, { role: "TR" }),
      ...body,
      group([...rules, ...frames, line([box.xMm, end], [right, end], { colour: ink, widthMm: 0.2 })]),
      line([left, box.yMm], [left, end], { colour: ink, widthMm: 0.3 }),
    ],
    { role: "Table", alt },
  );
}

function cell(role: "TH" | "TD", items: readonly Item[]): Group {
  return group(items, { role });
}

/** The column whose weight is nearest to the ideal, where one is within 10 %. */
function nearestIdeal({ cells, idealKg }: TableRow): number {
  let best = -1;
  let least = Math.log(1.1);
  for (const [j, { kg }] of cells.entries()) {
    if (kg === undefined) continue;
    const off = Math.abs(Math.log(kg / idealKg));
    if (off < least) {
      least = off;
      best = j;
    }
  }
  return best;
}
