import type { Block } from "../drawing/flow-columns.ts";
import type { Item, Point } from "../drawing/item.ts";
import { hairline, soft } from "../drawing/palette.ts";
import {
  breakLines,
  hasRoomForTail,
  type ParagraphLook,
  paragraphHeightMm,
  setParagraph,
  setText,
} from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import type { WrittenLine } from "./write-line.ts";

/** Room that a dose keeps free at its lower right, as to sign for it. */
export interface Corner {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Draws it with its lower right corner there. */
  readonly draw: (at: Point) => Item;
}

/** Sizes of type, pt, and the white round the hairline between two doses, mm. */
export interface DoseType {
  readonly headPt: number;
  readonly dosePt: number;
  readonly notePt: number;
  readonly ruleMm: number;
}

/** On a page for many weights. */
export const bookletType: DoseType = { headPt: 6.4, dosePt: 8.4, notePt: 6, ruleMm: 1 };
/** Where there is room. */
export const roomyType: DoseType = { headPt: 7.2, dosePt: 9.6, notePt: 6.6, ruleMm: 1.6 };
/** The smallest that is read at arm's length by those who hold the sheet. */
export const denseType: DoseType = { headPt: 6, dosePt: 8, notePt: 6, ruleMm: 0.7 };

const betweenMm = 2;
/** What a dose on one line is worth, mm. */
const unbrokenMm = 0.5;

/** One dose: what for and by which weight, then what is drawn up, then what else must be known; a corner beside its last lines. */
export function doseBlock(
  context: SheetContext,
  given: {
    readonly own: WrittenLine;
    readonly widthMm: number;
    readonly type: DoseType;
    readonly corner?: Corner;
  },
): Block {
  const { own, widthMm, type, corner } = given;
  if (own.isWithheld) return withheldBlock(context, given);
  const { headPt, dosePt, notePt, ruleMm } = type;
  const { typefaces } = context;
  const basis = [own.basis ?? [], own.marks].flat().join(" ");
  const basisMm = basis === "" ? 0 : typefaces.widthMm(basis, { font: "bold", sizePt: headPt });
  const besideMm = corner === undefined ? widthMm : widthMm - corner.widthMm - betweenMm;
  const dose = { sizePt: dosePt, font: "bold" } as const;
  const head: Part = {
    text: own.head,
    look: {
      sizePt: headPt,
      colour: soft,
      widthMm: widthMm - basisMm - betweenMm,
      ...formularyLanguage(context),
    },
  };
  const heightOf = ({ text, look }: Part): number => paragraphHeightMm(typefaces, text, look);
  // The corner stands beside dose and notes, or beside the last of the notes: whatever is lowest.
  const choices = [widthMm, ...(corner === undefined ? [] : [besideMm])].flatMap((doseMm) => {
    const doseLines = breakLines(typefaces, own.dose, { ...dose, widthMm: doseMm });
    const tail = own.rounded === undefined ? undefined : { text: own.rounded, sizePt: notePt };
    const hasTail =
      tail !== undefined &&
      hasRoomForTail(typefaces, {
        lines: doseLines,
        tail,
        look: dose,
        widthMm: doseMm,
      });
    const notes = [...(tail === undefined || hasTail ? [] : [tail.text]), ...own.notes].join(" ");
    const above: readonly Part[] = [
      head,
      { text: own.dose, look: { ...dose, widthMm: doseMm, ...(hasTail ? { tail } : {}) } },
    ];
    const note = { sizePt: notePt, role: "Span" } as const;
    const lines = notes === "" ? [] : breakLines(typefaces, notes, { ...note, widthMm });
    const cuts = corner === undefined ? [lines.length] : [...lines.keys(), lines.length];
    return cuts.map((cut) => {
      const part = (own: readonly string[], noteMm: number): readonly Part[] =>
        own.length === 0 ? [] : [{ text: own.join(" "), look: { ...note, widthMm: noteMm } }];
      const notesParts = [...part(lines.slice(0, cut), widthMm), ...part(lines.slice(cut), besideMm)];
      const parts = [...above, ...notesParts];
      const heights = parts.map(heightOf);
      const isDoseBeside = doseMm === besideMm && cut === 0;
      const freeFrom = isDoseBeside ? 1 : cut === 0 ? 2 : 3;
      const cornerMm = corner?.heightMm ?? 0;
      const heightMm =
        sum(heights.slice(0, freeFrom)) + Math.max(sum(heights.slice(freeFrom)), cornerMm) + ruleMm;
      // A dose is broken over two lines only where that saves more than a hair.
      const costMm = heightMm + (doseLines.length - 1) * unbrokenMm;
      return { parts, heights, heightMm, costMm };
    });
  });
  const { parts, heights, heightMm } = choices.reduce((best, other) =>
    other.costMm < best.costMm ? other : best,
  );
  return {
    heightMm,
    draw: (x, y) => {
      let at = y;
      const texts = parts.map(({ text, look }, i) => {
        const set = setParagraph(typefaces, text, { ...look, at: [x, at] });
        at += heights[i] as number;
        return set.group;
      });
      const foot = y + heightMm - ruleMm / 2;
      return group([
        ...texts.slice(0, 1),
        ...(basis === ""
          ? []
          : [
              setText(typefaces, basis, [x + widthMm, y + 0.35 * headPt], {
                sizePt: headPt,
                font: "bold",
                anchor: "end",
              }),
            ]),
        ...texts.slice(1, 2),
        ...(texts.length > 2 ? [group(texts.slice(2), { role: "P" })] : []),
        ...(corner === undefined ? [] : [corner.draw([x + widthMm, y + heightMm - ruleMm])]),
        line([x, foot], [x + widthMm, foot], { colour: hairline, widthMm: 0.12 }),
      ]);
    },
  };
}

interface Part {
  readonly text: string;
  readonly look: ParagraphLook;
}

/** A use that has no dose for this child, and why: in running words, with nothing to sign for. */
function withheldBlock(
  context: SheetContext,
  { own, widthMm, type }: { readonly own: WrittenLine; readonly widthMm: number; readonly type: DoseType },
): Block {
  const { typefaces } = context;
  const words = [own.dose, ...own.notes, ...own.marks].join(" ");
  const look = { sizePt: type.headPt, widthMm };
  const spoken = formularyLanguage(context);
  const isShort = typefaces.widthMm(own.head, { font: "bold", sizePt: type.headPt }) < widthMm * 0.8;
  const parts = isShort
    ? [{ text: words, look: { ...look, lead: own.head, leadLanguage: spoken.language } }]
    : [
        { text: own.head, look: { ...look, font: "bold" as const, ...spoken } },
        { text: words, look },
      ];
  const heights = parts.map((part) => paragraphHeightMm(typefaces, part.text, part.look));
  const heightMm = sum(heights) + type.ruleMm;
  return {
    heightMm,
    draw: (x, y) => {
      let at = y;
      const foot = y + heightMm - type.ruleMm / 2;
      return group([
        ...parts.map((part, i) => {
          const set = setParagraph(typefaces, part.text, { ...part.look, colour: soft, at: [x, at] });
          at += heights[i] as number;
          return set.group;
        }),
        line([x, foot], [x + widthMm, foot], { colour: hairline, widthMm: 0.12 }),
      ]);
    },
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, own) => total + own, 0);
}
