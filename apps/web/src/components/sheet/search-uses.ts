import { describeProblem } from "@steelyard/core/wording";
import { language } from "../../messages/language.ts";
import type { FormularyIndex, IndexedProblem } from "../../state/index-formulary.ts";
import { plainText } from "../../state/plain-text.ts";

/** More than this many lines at once is no answer to a search, and costs a slow phone too much. */
const mostShown = 30;

export interface Found {
  readonly count: number;
  readonly shown: number;
  readonly problems: readonly IndexedProblem[];
}

/** The uses whose medicine, use or problem holds every word, in the order of the sheet; undefined where nothing is asked. */
export function searchUses({ problems }: FormularyIndex, search: string): Found | undefined {
  const words = plainText(search).split(/\s+/).filter(Boolean);
  if (words.length === 0) return undefined;
  let count = 0;
  const found = problems.flatMap(({ problem, uses }) => {
    const hits = uses.filter(({ medicine, use }) => {
      const text = plainText(`${medicine} ${use} ${describeProblem(problem, language?.messages)}`);
      return words.every((word) => text.includes(word));
    });
    const room = Math.max(0, mostShown - count);
    count += hits.length;
    const shown = hits.slice(0, room);
    return shown.length === 0 ? [] : [{ problem, uses: shown }];
  });
  return { count, shown: Math.min(count, mostShown), problems: found };
}
