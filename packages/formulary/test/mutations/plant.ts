import { withValueAt } from "../../src/ownership/formulary-path.ts";
import type { Mutant } from "./mutants.ts";

/** The text of the file with the fault in it. Throws where the place is not there, or not there once. */
export function plant({ name, edit }: Mutant, text: string): string {
  if ("at" in edit) {
    const planted = withValueAt(JSON.parse(text), edit.at, edit.value);
    if (!planted.ok) throw new Error(`Cannot plant "${name}" as ${planted.error.at} is not there`);
    return JSON.stringify(planted.value);
  }
  const parts = text.split(edit.from);
  if (parts.length !== 2) {
    throw new Error(`Cannot plant "${name}" as its text is there ${parts.length - 1} times`);
  }
  return parts.join(edit.to);
}
