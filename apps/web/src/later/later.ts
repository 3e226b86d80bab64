// What the first screen does without: the formulary, the arithmetic of doses, equipment, normal signs and the lines of the sheet. It is asked
// for as soon as the first screen stands, and awaited where a dose is shown.
import { DoseLine } from "../components/dose-line/dose-line.tsx";
import { sharedSentences } from "../components/dose-line/line-flags.ts";
import { LookupLines } from "../components/lookup-line/lookup-lines.tsx";
import { searchLookups } from "../components/lookup-line/search-lookups.ts";
import { NumberPad } from "../components/number-pad/number-pad.tsx";
import { TechniqueHelp } from "../components/technique/technique-help.tsx";
import { hasTechnique } from "../components/technique/techniques-of.ts";
import { setRunning } from "../effects/running-versions.ts";
import { findRules, settleRules, watchRules } from "../effects/site-rules/site-rules.ts";
import { readBurn } from "../state/read-burn.ts";
import { slipMessages } from "../state/slip-messages.ts";
import { computeReport } from "./compute-report.ts";

export const later = {
  DoseLine,
  NumberPad,
  LookupLines,
  searchLookups,
  TechniqueHelp,
  hasTechnique,
  sharedSentences,
  readBurn,
  slipMessages,
  computeReport,
  findRules,
  watchRules,
  settleRules,
  setRunning,
} as const;
export type Later = typeof later;
