import type { Formulary, ProblemId, Use } from "@steelyard/core/dosing";
import { describeProblem } from "@steelyard/core/wording";
import { type Block, flowPages, headingBlock, noFoot } from "../drawing/flow-columns.ts";
import type { Box, Group, Item } from "../drawing/item.ts";
import { hairline, soft } from "../drawing/palette.ts";
import { paragraphHeightMm, setParagraph } from "../drawing/set-text.ts";
import { group, line } from "../drawing/shapes.ts";
import { formularyLanguage } from "../frame/formulary-language.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

const gapMm = 5;

/**
 * What does not depend on the weight and so stands once, behind all weights: of each use when it must not be given, what to beware of and
 * what to watch.
 */
export function drawBeforeGiving(
  context: SheetContext,
  {
    formulary,
    problems,
    box,
  }: { readonly formulary: Formulary; readonly problems: readonly ProblemId[]; readonly box: Box },
): readonly (readonly Item[])[] {
  const widthMm = (box.widthMm - gapMm) / 2;
  const blocks: Block[] = [];
  for (const problem of problems) {
    const own = formulary.medicines.flatMap(({ name, uses }) =>
      uses.filter((use) => use.problem === problem && hasWords(use)).map((use) => ({ name, use })),
    );
    if (own.length === 0) continue;
    blocks.push(
      headingBlock(context.typefaces, describeProblem(problem, context.messages.language.messages), widthMm),
    );
    for (const { name, use } of own) blocks.push(useBlock(context, `${name}, ${use.title}`, use, widthMm));
  }
  return blocks.length === 0 ? [] : flowPages({ blocks, boxOf: () => box, foot: noFoot, columns: 2, gapMm });
}

function hasWords({ contraindications, cautions, monitoring }: Use): boolean {
  return contraindications.length + cautions.length + monitoring.length > 0;
}

function useBlock(context: SheetContext, head: string, use: Use, widthMm: number): Block {
  const { typefaces, messages } = context;
  const { booklet } = messages;
  const spoken = formularyLanguage(context);
  const kinds = [
    [booklet.notFor, use.contraindications],
    [booklet.beware, use.cautions],
    [booklet.watch, use.monitoring],
  ] as const;
  const parts = [
    { words: head, look: { sizePt: 7.2, font: "bold", widthMm, ...spoken } as const },
    ...kinds.flatMap(([word, notes]) =>
      notes.length === 0
        ? []
        : [
            {
              words: notes.map(({ text }) => text).join(" "),
              look: {
                sizePt: 6.4,
                widthMm,
                lead: word,
                ...spoken,
                ...(notes === use.monitoring ? { colour: soft } : {}),
              } as const,
            },
          ],
    ),
  ];
  const heights = parts.map(({ words, look }) => paragraphHeightMm(typefaces, words, look));
  const heightMm = heights.reduce((sum, height) => sum + height, 0) + 1.2;
  return {
    heightMm,
    draw: (x, y): Group => {
      let top = y;
      const items = parts.map(({ words, look }, i) => {
        const { group: own } = setParagraph(typefaces, words, { ...look, at: [x, top] });
        top += heights[i] as number;
        return own;
      });
      const foot = y + heightMm - 0.6;
      return group([...items, line([x, foot], [x + widthMm, foot], { colour: hairline, widthMm: 0.12 })]);
    },
  };
}
