import type { Formulary, ProblemId } from "@steelyard/core/dosing";
import { computeEquipment } from "@steelyard/core/equipment";
import { computeSigns } from "@steelyard/core/signs";
import { formatNumber } from "@steelyard/core/units";
import { describeProblem } from "@steelyard/core/wording";
import { type Block, flowPages, headingBlock } from "../drawing/flow-columns.ts";
import type { Box, Item } from "../drawing/item.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { bookletType, type DoseType, denseType, doseBlock } from "./dose-block.ts";
import { lengthAtIdeal } from "./length-at-ideal.ts";
import { lookupFoot } from "./lookup-foot.ts";
import { sheetAt, type WeightStep } from "./weight-steps.ts";
import { writeLine } from "./write-line.ts";

const gapMm = 5;

/** The pages of one weight step: every dose of the chosen problems in two columns, equipment and signs at the foot of the last. */
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
  const blocksIn = (type: DoseType): readonly Block[] =>
    problems.flatMap((problem) => {
      const lines = sheet.filter((own) => own.problem === problem);
      if (lines.length === 0) return [];
      const title = describeProblem(problem, context.messages.language.messages);
      return [
        headingBlock(context.typefaces, title, widthMm),
        ...lines.map((own) => doseBlock(context, { own: writeLine(own, context.messages), widthMm, type })),
      ];
    });
  const size = { lengthCm: lengthAtIdeal(step.kg), totalKg: step.kg, idealKg: step.kg };
  const foot = lookupFoot(context, {
    equipment: computeEquipment(size),
    signs: computeSigns(size),
    box,
    sizePt: 6.2,
  });
  const pagesIn = (type: DoseType): readonly (readonly Item[])[] =>
    flowPages({ blocks: blocksIn(type), boxOf: () => box, foot, columns: 2, gapMm });
  const pages = pagesIn(bookletType);
  // A third page, for the few weights whose doses say more, is worth smaller type.
  return pages.length > 2 ? pagesIn(denseType) : pages;
}

/** "Computed for 12 kg. ...", over the doses. */
export function stepNote({ messages }: SheetContext, { kg }: WeightStep): string {
  return messages.booklet.computedFor({
    kg: formatNumber(kg, messages.language.numbers),
    lengthCm: formatNumber(lengthAtIdeal(kg), messages.language.numbers),
  });
}
