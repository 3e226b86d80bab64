import type { DosingWarning, SheetLine } from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable } from "@steelyard/core/wording";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";

/** What a closed line says about its dose. */
export interface LineFlags {
  /** Whole sentences, in the colour of a warning: the reader must do or decide something. */
  readonly loud: readonly string[];
  /** A few words each; the sentence stands in the opened line. */
  readonly quiet: readonly string[];
}

/**
 * Nearly every dose is rounded to a mark of the syringe, and what is true of the whole child is said once above the
 * sheet (`shared`). Were these as loud on each line as a real doubt, neither would be read.
 */
export function lineFlags(line: SheetLine, shared: ReadonlySet<string>): LineFlags {
  const loud: string[] =
    line.unavailable === undefined ? [] : [describeUnavailable(line.unavailable, language?.dosing)];
  const quiet: string[] = [];
  for (const warning of line.warnings) {
    // The line shows the recipe itself.
    if (warning.type === "diluted") continue;
    const sentence = describeDosingWarning(warning, language?.dosing);
    const short = shortFlag(warning, shared.has(sentence));
    if (short === undefined) loud.push(sentence);
    else quiet.push(short);
  }
  return { loud: [...new Set(loud)], quiet: [...new Set(quiet)] };
}

/** A sentence that stands above the sheet once. */
export interface SharedSentence {
  readonly sentence: string;
  /** It tells how the doses were computed and asks for nothing. */
  readonly isQuiet: boolean;
}

/** Among fewer lines than this nothing is common. */
const fewestLines = 4;

/** What more than half of the lines carry: it speaks of the child, not of one dose. */
export function sharedSentences(lines: readonly SheetLine[]): readonly SharedSentence[] {
  if (lines.length < fewestLines) return [];
  const count = new Map<string, { readonly isQuiet: boolean; readonly lines: Set<string> }>();
  for (const { id, warnings } of lines) {
    for (const warning of warnings) {
      const sentence = describeDosingWarning(warning, language?.dosing);
      const seen = count.get(sentence) ?? { isQuiet: warning.type === "basis-swapped", lines: new Set() };
      seen.lines.add(id);
      count.set(sentence, seen);
    }
  }
  return [...count]
    .filter(([, seen]) => seen.lines.size > lines.length / 2)
    .map(([sentence, { isQuiet }]) => ({ sentence, isQuiet }));
}

function shortFlag(warning: DosingWarning, isShared: boolean): string | undefined {
  switch (warning.type) {
    case "rounded":
      return warning.aboveTolerance
        ? undefined
        : sheetMessages.flag.rounded(
            formatNumber(Math.abs(warning.errorPercent), language?.numbers),
            warning.errorPercent < 0,
          );
    case "limited":
      return sheetMessages.flag.limited[warning.by];
    case "bases-differ":
      return sheetMessages.flag.basesDiffer;
    case "basis-swapped":
      return sheetMessages.flag.basisSwapped;
    case "age-needed":
      return isShared ? sheetMessages.flag.ageNeeded : undefined;
    case "neonate":
      return isShared ? sheetMessages.flag.neonate : undefined;
    default:
      return undefined;
  }
}
