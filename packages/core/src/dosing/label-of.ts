import { formatConcentration } from "../units/index.ts";
import type { Concentration } from "./working-step.ts";

/** A concentration as plain text for files: as people read it, with an ordinary space. */
export function labelOf(concentration: Concentration): string {
  return formatConcentration(concentration).replaceAll("\u00a0", " ");
}
