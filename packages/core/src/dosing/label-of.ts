import { type DoseUnit, formatConcentration } from "../units/index.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { Concentration } from "./working-step.ts";

const LARGER: Partial<Record<DoseUnit, DoseUnit>> = { nanogram: "microgram", microgram: "mg" };

/** A concentration as plain text for files: as people read it, with an ordinary space. */
export function labelOf(concentration: Concentration): string {
  return formatConcentration(concentration).replaceAll("\u00a0", " ");
}

/**
 * The concentration of a syringe that was made up, as it is written on it: 1,000 micrograms/mL or more in mg/mL, as any
 * other mass is, so that it can be held against the ampoule. The strength of an ampoule stays in the unit of its label.
 *
 * @source bnfc-prescription-writing
 */
export function labelOfPrepared({ amountPerMl, unit }: Concentration): string {
  const larger = LARGER[unit];
  return larger === undefined || amountPerMl < 1000
    ? labelOf({ amountPerMl, unit })
    : labelOfPrepared({ amountPerMl: withoutDrift(amountPerMl / 1000), unit: larger });
}
