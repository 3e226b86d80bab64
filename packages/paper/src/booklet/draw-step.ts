import type { Formulary, ProblemId } from "@steelyard/core/dosing";
import { computeEquipment } from "@steelyard/core/equipment";
import { computeSigns } from "@steelyard/core/signs";
import { formatNumber } from "@steelyard/core/units";
import { describeProblem } from "@steelyard/core/wording";
import { lookupBlocksOf } from "../child-sheet/sheet-blocks.ts";
import { type Block, flowColumns, headingBlock } from "../drawing/flow-columns.ts";
import type { Box, Group, Item } from "../drawing/item.ts";
import { hairline, soft } from "../drawing/palette.ts";
import { setParagraph, setText } from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { lengthAtIdeal } from "./length-at-ideal.ts";
import { sheetAt, type WeightStep } from "./weight-steps.ts";
import { type WrittenLine, writeLine } from "./write-line.ts";

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
    blocks.push(
      headingBlock(context.typefaces, describeProblem(problem, context.messages.language.messages), widthMm),
    );
    for (const own of lines) blocks.push(doseBlock(context, writeLine(own, context.messages), widthMm));
  }
  blocks.push(...lookupBlocks(context, step, widthMm));
  return flowColumns({ blocks, box, columns: 2, gapMm });
}

function doseBlock(context: SheetContext, own: WrittenLine, widthMm: number): Block {
  const { typefaces } = context;
  const head = {
    sizePt: 6.6,
    colour: soft,
    widthMm: widthMm - basisMm,
    ...formularyLanguage(context),
  } as const;
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
  return [
    headingBlock(context.typefaces, messages.booklet.equipmentTitle, widthMm),
    ...lookupBlocksOf(context, computeEquipment(size), widthMm),
    headingBlock(context.typefaces, messages.booklet.signsTitle, widthMm),
    ...lookupBlocksOf(context, computeSigns(size), widthMm),
  ];
}

/** "Computed for 12 kg. ...", over the doses. */
export function stepNote({ messages }: SheetContext, { kg }: WeightStep): string {
  return messages.booklet.computedFor({
    kg: formatNumber(kg, messages.language.numbers),
    lengthCm: formatNumber(lengthAtIdeal(kg), messages.language.numbers),
  });
}
