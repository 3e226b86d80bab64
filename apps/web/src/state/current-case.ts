import { type BedsideState, isTouched } from "./bedside-state.ts";

/** The case that this tab writes to, and whether its child is the one on Bedside. */
export interface CurrentCase {
  readonly caseId: string;
  /** The texts of the child when “New child” was pressed; absent while the case is that of the child on the screen. */
  readonly leftWith?: string;
}

/**
 * What “New child” and “Bring back” mean for the case: a new child has a case of its own, and the one brought back has the one
 * it had. Clearing the fields by hand changes nothing.
 */
export function followChild(
  current: CurrentCase | undefined,
  { texts, setAside, broughtBack }: Pick<BedsideState, "texts" | "setAside" | "broughtBack">,
): CurrentCase | undefined {
  if (current === undefined) return undefined;
  const { caseId, leftWith } = current;
  if (leftWith === undefined) {
    return !isTouched(texts) && setAside !== undefined
      ? { caseId, leftWith: JSON.stringify(setAside) }
      : current;
  }
  return broughtBack && isTouched(texts) && JSON.stringify(texts) === leftWith ? { caseId } : current;
}
