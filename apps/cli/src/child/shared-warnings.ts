import type { DosingWarning, SheetLine } from "@steelyard/core/dosing";
import { describeDosingWarning } from "@steelyard/core/wording";

/** From so many lines on a warning is said once, above the sheet. */
const SHARED_FROM = 3;

/** Those about the child; one about a dose stays with its dose. */
const ABOUT_THE_CHILD: readonly DosingWarning["type"][] = ["neonate", "age-needed", "basis-swapped"];

/** The warnings that several lines have word for word, each with the number by which the lines refer to it. */
export function sharedWarnings(sheet: readonly SheetLine[]): ReadonlyMap<string, number> {
  const linesBySentence = new Map<string, number>();
  for (const { warnings } of sheet) {
    const about = warnings.filter(({ type }) => ABOUT_THE_CHILD.includes(type));
    for (const sentence of new Set(about.map((warning) => describeDosingWarning(warning)))) {
      linesBySentence.set(sentence, (linesBySentence.get(sentence) ?? 0) + 1);
    }
  }
  const shared = [...linesBySentence].filter(([, lines]) => lines >= SHARED_FROM);
  return new Map(shared.map(([sentence], index) => [sentence, index + 1]));
}
