import { formatNumber } from "@steelyard/core/units";
import { describeBodyIssue } from "@steelyard/core/wording";
import type { DrawingFault } from "@steelyard/paper";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import type { PaperRefusal } from "./paper-refusal.ts";

/** How many texts that do not fit are named. */
const shown = 3;

/** Why there is no paper, one sentence a line. */
export function describeRefusal(refusal: PaperRefusal, command: string): readonly string[] {
  const written = (mm: number): string => formatNumber(mm, language?.numbers);
  switch (refusal.type) {
    case "no-problem":
      return [paperMessages.noProblem];
    case "no-child":
      return [paperMessages.noChild];
    case "roll-width-missing":
      return [paperMessages.rollWidthMissing];
    case "too-wide":
      return [paperMessages.tooWide(written(refusal.mostMm))];
    case "too-narrow":
      return [paperMessages.tooNarrow(written(refusal.widthMm), written(refusal.leastMm))];
    case "other-model":
      return [paperMessages.otherModel(refusal.profileModel, refusal.currentModel)];
    case "changed-since-signed":
      return [paperMessages.changedSinceSigned(refusal.name, refusal.date)];
    case "no-estimate":
      return [describeBodyIssue(refusal.issue, language?.messages)];
    case "faults":
      return [paperMessages.cannotDraw, ...refusal.faults.slice(0, shown).map(faultSentence)];
    case "not-loaded":
      return [paperMessages.typefaceMissing];
    case "failed":
      return [`${paperMessages.notMade} ${command}`];
  }
}

function faultSentence(fault: DrawingFault): string {
  if (fault.type === "glyphs-missing") return paperMessages.glyphsMissing(fault.characters, fault.text);
  return paperMessages.doesNotFit(fault.type === "texts-overlap" ? fault.texts[0] : fault.text);
}
