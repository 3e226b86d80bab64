import type { ProblemId } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";
import { CommandFailure, EXIT } from "../exit-status.ts";

const ids: readonly ProblemId[] = draftFormulary.problemOrder ?? [];

/** The help of --problem. */
export function problemsHelp(): string {
  return `the problems on it: ${ids.join(", ")}`;
}

/** The problem of an id; a sentence with the ids there are for any other. */
export function problemOf(text: string): ProblemId {
  const found = ids.find((id) => id === text);
  if (found !== undefined) return found;
  throw new CommandFailure(
    EXIT.wrongUsage,
    `There is no problem "${text}": use ${ids.join(", ")}. Nothing was written.`,
  );
}
