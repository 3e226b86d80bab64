import { readBurnPercent } from "@steelyard/core/entry";
import { describeBurnPercentIssue } from "@steelyard/core/wording";
import { language } from "../messages/language.ts";
import type { BedsideState } from "./bedside-state.ts";
import type { FieldMessage } from "./field-message.ts";

/** The burnt share of the body surface, which changes a fluid and no weight. */
export interface BurnRead {
  /** Above 0 to 100 %; absent where nothing was typed that can be one. */
  readonly burnPercent: number | undefined;
  readonly messages: readonly FieldMessage[];
}

const nothing: BurnRead = { burnPercent: undefined, messages: [] };

/** What was typed as the burnt share; half a number under the fingers is no reason to complain. */
export function readBurn({ texts, typing }: Pick<BedsideState, "texts" | "typing">): BurnRead {
  if (texts.burnPercent.trim() === "") return nothing;
  const read = readBurnPercent(texts.burnPercent);
  if (read.ok) return { burnPercent: read.value, messages: [] };
  if (typing === "burnPercent") return nothing;
  const sentence = describeBurnPercentIssue(read.error, language?.dosing);
  return {
    burnPercent: undefined,
    messages: [{ field: "burnPercent", kind: "issue", sentence, proposals: [] }],
  };
}
