import type { Formulary, ProblemId } from "@steelyard/core/dosing";
import { computeEquipment } from "@steelyard/core/equipment";
import { computeSigns } from "@steelyard/core/signs";
import { formatNumber } from "@steelyard/core/units";
import {
  describeEquipmentItem,
  describeEquipmentSize,
  describeProblem,
  describeSign,
  describeSignValue,
} from "@steelyard/core/wording";
import type { Box, Group, Item } from "../drawing/item.ts";
import { hairline, soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { lengthAtIdeal } from "./length-at-ideal.ts";
import { sheetAt, type WeightStep } from "./weight-steps.ts";
import { type WrittenLine, writeLine } from "./write-line.ts";

/** A piece of a page that is not broken: how high it is, and how to draw it in a column. */
interface Block {
  readonly heightMm: number;
  /** Whether it must not be the last of a column. */
  readonly leads?: true;
  readonly draw: (xMm: number, yMm: number) => Item;
}

const gapMm = 5;
const basisMm = 13;

/** The pages of one weight step: every dose of the chosen problems, then equipment and signs, flowing over two columns a page. */
export function drawStep(
  context: SheetContext,
  given: {
    readonly formulary: Formulary;
    readonly problems: readonly ProblemId[];
    readonly step: WeightStep;
    readonly box: Box;
  },
): readonly (readonly Item[])[] {
  const { formulary, problems, step, box } = given;
  const widthMm = (box.widthMm - gapMm) / 2;
  const sheet = sheetAt(formulary, step.kg);
  const blocks: Block[] = [];
  for (const problem of problems) {
    const lines = sheet.filter((own) => own.problem === problem);
    if (lines.length === 0) continue;
    blocks.push(heading(context, describeProblem(problem, context.messages.core), widthMm));
    for (const own of lines)
      blocks.push(doseBlock(context, writeLine(own, context.messages.booklet), widthMm));
  }
  blocks.push(...lookupBlocks(context, step, widthMm));
  return flow(blocks, box, widthMm);
}

function flow(blocks: readonly Block[], box: Box, widthMm: number): readonly (readonly Item[])[] {
  const pages: Item[][] = [[]];
  let column = 0;
  let y = box.yMm;
  const bottom = box.yMm + box.heightMm;
  for (const [i, block] of blocks.entries()) {
    const next = blocks[i + 1];
    const needed = block.heightMm + (block.leads && next !== undefined ? next.heightMm : 0);
    if (y + needed > bottom && y > box.yMm) {
      column += 1;
      y = box.yMm;
      if (column === 2) {
        pages.push([]);
        column = 0;
      }
    }
    pages.at(-1)?.push(block.draw(box.xMm + column * (widthMm + gapMm), y));
    y += block.heightMm;
  }
  return pages;
}

function heading({ typefaces }: SheetContext, words: string, widthMm: number): Block {
  return {
    heightMm: 6.6,
    leads: true,
    draw: (x, y) =>
      group(
        [
          { kind: "rectangle", xMm: x, yMm: y + 1, widthMm, heightMm: 4.6, fill: "#000000" },
          setText(typefaces, words, [x + 1.5, y + 4.4], { font: "bold", sizePt: 9, colour: "#ffffff" }),
        ],
        { role: "H2" },
      ),
  };
}

function doseBlock({ typefaces }: SheetContext, own: WrittenLine, widthMm: number): Block {
  const head = { sizePt: 6.6, colour: soft, widthMm: widthMm - basisMm } as const;
  const dose = { sizePt: 8.4, font: "bold", widthMm } as const;
  const note = { sizePt: 6, widthMm } as const;
  const measured = (text: string, look: typeof head | typeof dose | typeof note): number =>
    setParagraph(typefaces, text, { ...look, at: [0, 0] }).heightMm;
  const headMm = measured(own.head, head);
  const doseMm = measured(own.dose, dose);
  const words = own.notes.join(" ");
  const noteMm = words === "" ? 0 : measured(words, note);
  const heightMm = headMm + doseMm + noteMm + 1.2;
  return {
    heightMm,
    draw: (x, y): Group =>
      group([
        setParagraph(typefaces, own.head, { ...head, at: [x, y] }).group,
        ...(own.basis === undefined
          ? []
          : [
              setText(typefaces, own.basis, [x + widthMm, y + 2.3], {
                sizePt: 6.6,
                font: "bold",
                anchor: "end",
              }),
            ]),
        setParagraph(typefaces, own.dose, { ...dose, at: [x, y + headMm] }).group,
        ...(words === ""
          ? []
          : [setParagraph(typefaces, words, { ...note, at: [x, y + headMm + doseMm] }).group]),
        line([x, y + heightMm - 0.6], [x + widthMm, y + heightMm - 0.6], { colour: hairline, widthMm: 0.12 }),
      ]),
  };
}

/** Equipment and signs of the child whose ideal weight this is. */
function lookupBlocks(context: SheetContext, { kg }: WeightStep, widthMm: number): readonly Block[] {
  const { messages } = context;
  const lengthCm = lengthAtIdeal(kg);
  const size = { lengthCm, totalKg: kg, idealKg: kg };
  const equipment = computeEquipment(size).flatMap((own) =>
    own.unavailable === undefined
      ? [[describeEquipmentItem(own), describeEquipmentSize(own.item, own)] as const]
      : [],
  );
  const signs = computeSigns(size).flatMap((own) =>
    own.unavailable === undefined ? [[describeSign(own), describeSignValue(own)] as const] : [],
  );
  return [
    heading(context, messages.booklet.equipmentTitle, widthMm),
    ...equipment.map((row) => rowBlock(context, row, widthMm)),
    heading(context, messages.booklet.signsTitle, widthMm),
    ...signs.map((row) => rowBlock(context, row, widthMm)),
  ];
}

function rowBlock(
  { typefaces }: SheetContext,
  [name, value]: readonly [string, string],
  widthMm: number,
): Block {
  const share = 0.52;
  const nameLook = { sizePt: 7, widthMm: widthMm * share - 2 } as const;
  const valueLook = { sizePt: 7.4, font: "bold", widthMm: widthMm * (1 - share) } as const;
  const height = Math.max(
    setParagraph(typefaces, name, { ...nameLook, at: [0, 0] }).heightMm,
    setParagraph(typefaces, value, { ...valueLook, at: [0, 0] }).heightMm,
  );
  return {
    heightMm: height + 0.5,
    draw: (x, y) =>
      group([
        setParagraph(typefaces, name, { ...nameLook, at: [x, y] }).group,
        setParagraph(typefaces, value, { ...valueLook, at: [x + widthMm * share, y] }).group,
      ]),
  };
}

/** "Computed for 12 kg. ...", over the doses. */
export function stepNote({ messages }: SheetContext, { kg }: WeightStep): string {
  return messages.booklet.computedFor({ kg: formatNumber(kg), lengthCm: formatNumber(lengthAtIdeal(kg)) });
}
