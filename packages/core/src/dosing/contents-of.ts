import { exactly, type Rational } from "../units/rational.ts";
import { labelOf } from "./label-of.ts";
import type { LiquidStrength } from "./strength.ts";
import type { Concentration } from "./working-step.ts";

/** What each mL of a strength holds, counted as one substance. */
export interface Content {
  /** Absent where it is the medicine itself. */
  readonly of?: string;
  readonly concentration: Concentration;
  readonly exactPerMl: Rational;
  readonly label: string;
}

/** A strength is never changed in place, so what follows from it is worked out once. */
const contentsByStrength = new WeakMap<LiquidStrength, readonly Content[]>();

/** Every way the label counts its contents, the main one first. */
export function contentsOf(strength: LiquidStrength): readonly Content[] {
  const known = contentsByStrength.get(strength);
  if (known !== undefined) return known;
  const contents = [strength, ...(strength.equivalents ?? [])].map(({ amountPerMl, unit, expressedAs }) => ({
    ...(expressedAs !== undefined && { of: expressedAs }),
    concentration: { amountPerMl, unit },
    exactPerMl: exactly(amountPerMl),
    label: labelOf({ amountPerMl, unit }),
  }));
  contentsByStrength.set(strength, contents);
  return contents;
}

/**
 * What each mL holds of the substance a dose is of. A salt is never taken for its element: what the label does not
 * state is not there, and asking for it throws a `RangeError`.
 */
export function contentOf(strength: LiquidStrength, of: string | undefined): Content {
  const content = contentsOf(strength).find((candidate) => candidate.of === of);
  if (content !== undefined) return content;
  throw new RangeError(
    `Cannot draw up a dose as strength ${strength.id} must state its content of ${of ?? "the medicine itself"}`,
  );
}
