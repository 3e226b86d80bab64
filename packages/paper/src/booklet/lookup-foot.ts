import type { EquipmentLine } from "@steelyard/core/equipment";
import type { SignLine } from "@steelyard/core/signs";
import {
  describeEquipmentItem,
  describeEquipmentSize,
  describeSign,
  describeSignValue,
} from "@steelyard/core/wording";
import { type Block, evenBlock, headingBlock, type PageFoot } from "../drawing/flow-columns.ts";
import type { Box } from "../drawing/item.ts";
import { paragraphHeightMm, setParagraph } from "../drawing/set-text.ts";
import { group } from "../drawing/shapes.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

const gapMm = 5;
/** Of the width between the gaps: signs have few words and short values. */
const signsShare = 0.31;
/** How much of a row its name may take; what needs the fewest lines is taken. The ranges of signs are long and never broken. */
const nameShares = { equipment: [0.5, 0.54, 0.58, 0.62, 0.66], signs: [0.46, 0.5, 0.54] };
/** Between the doses and the foot. */
const overMm = 1.5;

/** Sizes in two columns and signs in a third, always at the very foot of a page, where they are found without looking. */
export function lookupFoot(
  context: SheetContext,
  given: {
    readonly equipment: readonly EquipmentLine[];
    readonly signs: readonly SignLine[];
    readonly box: Box;
    /** Type of the names. */
    readonly sizePt: number;
  },
): PageFoot {
  const { equipment, signs, box, sizePt } = given;
  const { messages, typefaces } = context;
  const besideMm = (box.widthMm - 2 * gapMm) * signsShare;
  const equipmentMm = box.widthMm - gapMm - besideMm;
  const parts = [
    {
      title: messages.booklet.equipmentTitle,
      lines: equipment,
      shares: nameShares.equipment,
      columns: 2,
      xMm: box.xMm,
      widthMm: equipmentMm,
    },
    {
      title: messages.booklet.signsTitle,
      lines: signs,
      shares: nameShares.signs,
      columns: 1,
      xMm: box.xMm + equipmentMm + gapMm,
      widthMm: besideMm,
    },
  ].map(({ title, lines, shares, columns, xMm, widthMm }) => ({
    heading: headingBlock(typefaces, title, widthMm),
    rows: lowestOf(
      shares.map((nameShare) => {
        const columnMm = (widthMm - (columns - 1) * gapMm) / columns;
        const blocks = rowBlocks(context, lines, { widthMm: columnMm, nameShare, sizePt });
        return evenBlock({ blocks, widthMm, columns, gapMm });
      }),
    ),
    xMm,
  }));
  const heightMm = Math.max(...parts.map(({ heading, rows }) => heading.heightMm + rows.heightMm));
  const yMm = box.yMm + box.heightMm - heightMm;
  return {
    heightMm: heightMm + overMm,
    draw: () =>
      parts.flatMap(({ heading, rows, xMm }) => [
        heading.draw(xMm, yMm),
        rows.draw(xMm, yMm + heading.heightMm),
      ]),
  };
}

function lowestOf(blocks: readonly Block[]): Block {
  return blocks.reduce((lowest, other) => (other.heightMm < lowest.heightMm ? other : lowest));
}

interface RowLook {
  readonly widthMm: number;
  readonly nameShare: number;
  readonly sizePt: number;
}

/** Sizes and signs, one a row; those that are not known are left out. */
function rowBlocks(
  context: SheetContext,
  lines: readonly (EquipmentLine | SignLine)[],
  row: RowLook,
): readonly Block[] {
  const { lookup } = context.messages.language;
  return lines.flatMap((own) => {
    if (own.unavailable !== undefined) return [];
    const words =
      "item" in own
        ? ([describeEquipmentItem(own, lookup), describeEquipmentSize(own.item, own, lookup)] as const)
        : ([describeSign(own, lookup), describeSignValue(own, lookup)] as const);
    return [rowBlock(context, words, row)];
  });
}

function rowBlock(
  { typefaces }: SheetContext,
  [name, value]: readonly [string, string],
  { widthMm, nameShare, sizePt }: RowLook,
): Block {
  const nameLook = { sizePt, widthMm: widthMm * nameShare - 1 } as const;
  const valueLook = { sizePt: sizePt + 0.4, font: "bold", widthMm: widthMm * (1 - nameShare) } as const;
  const heightMm =
    Math.max(paragraphHeightMm(typefaces, name, nameLook), paragraphHeightMm(typefaces, value, valueLook)) +
    0.2;
  return {
    heightMm,
    draw: (x, y) =>
      group([
        setParagraph(typefaces, name, { ...nameLook, at: [x, y] }).group,
        setParagraph(typefaces, value, { ...valueLook, at: [x + widthMm * nameShare, y] }).group,
      ]),
  };
}
