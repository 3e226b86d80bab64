import type { Strength } from "./strength.ts";
import type { Concentration } from "./working-step.ts";

/** What each mL of a strength holds, counted as one substance; `of` is absent where that is the medicine itself. */
export interface Content extends Concentration {
  readonly of?: string;
}

/** Every way the label counts its contents, the main one first. */
export function contentsOf({ amountPerMl, unit, expressedAs, equivalents = [] }: Strength): Content[] {
  return [
    { amountPerMl, unit, ...(expressedAs !== undefined && { of: expressedAs }) },
    ...equivalents.map((other) => ({
      amountPerMl: other.amountPerMl,
      unit: other.unit,
      of: other.expressedAs,
    })),
  ];
}

/**
 * What each mL holds of the substance a dose is of. A salt is never taken for its element: what the label does not
 * state is not there, and asking for it throws a `RangeError`.
 */
export function contentOf(strength: Strength, of: string | undefined): Content {
  const content = contentsOf(strength).find((candidate) => candidate.of === of);
  if (content !== undefined) return content;
  throw new RangeError(
    `Cannot draw up a dose as strength ${strength.id} must state its content of ${of ?? "the medicine itself"}`,
  );
}
