import type { Centimetres, Months } from "../units/index.ts";
import { type ChildFacts, childFacts, isWithin } from "./child-facts.ts";
import { computeLine } from "./compute-line.ts";
import type { Formulary, Use, VolumeRounding } from "./formulary.ts";
import { prepareUses } from "./prepare-uses.ts";
import type { SettlingMeasurement } from "./settling-measurement.ts";
import type { SheetLine } from "./sheet-line.ts";
import { type Syringe, usualSyringes } from "./syringes.ts";
import type { Weights } from "./weights.ts";

export interface SheetInput {
  readonly formulary: Formulary;
  /** Weights in kg, each above 0 and at most 1000. */
  readonly weights: Weights;
  /** Age in months, from 0. Unknown stays unknown: a use that needs it says so. */
  readonly ageMonths?: Months | undefined;
  /** Kept for limits by sex; no rule of the schema asks for it yet. */
  readonly sex?: "m" | "f" | undefined;
  /** Lying length, for doses by body surface. */
  readonly lengthCm?: Centimetres | undefined;
  /** Burnt share of the body surface, %, above 0 to 100, reddening not counted. Unknown stays unknown. */
  readonly burnPercent?: number | undefined;
  /** Id of the option to compute in place of the default, by id of the line. */
  readonly choices?: Readonly<Record<string, string>> | undefined;
  /** The syringes at hand, smallest first; the usual ones where absent. */
  readonly syringes?: readonly Syringe[] | undefined;
  /** What may still be measured, and how well the weight would then be known; a dose in doubt names what settles it. */
  readonly settles?: readonly SettlingMeasurement[] | undefined;
}

/**
 * Every use of the formulary for one child: dose, volume or rate, working, warnings and sources, one line each.
 *
 * dose = rule x weight of its basis, then its limits, then the strength, then the marks of a syringe. A use that
 * cannot be computed still has its line, with `unavailable` saying why. Throws a `RangeError` on a weight, age or
 * length that no child has, on an option that does not exist, and on a formulary that has not been validated.
 *
 * ```ts
 * import { computeSheet } from "@steelyard/core/dosing";
 * import { kilograms } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 * import assert from "node:assert/strict";
 * const sheet = computeSheet({ formulary: draftFormulary, weights: { totalKg: kilograms(18), idealKg: kilograms(18) } });
 * const line = sheet.find(({ id }) => id === "adrenaline.arrest");
 * assert.ok(line && !line.unavailable);
 * assert.deepEqual(line.dose, { amount: 180, unit: "microgram" });
 * assert.equal(line.volume?.ml, 1.8);
 * ```
 */
export function computeSheet(input: SheetInput): SheetLine[] {
  const { formulary, choices = {}, syringes = usualSyringes } = input;
  const { deviceEnergiesJ } = formulary;
  const child = childFacts(input);
  return prepareUses(formulary).map(({ lineId, medicine, use, strengths, inhalers, options }) => {
    const chosen = choices[lineId] ?? use.defaultOption;
    const prepared = options.get(chosen);
    if (prepared === undefined) {
      throw new RangeError(`Cannot compute ${lineId} as its option must exist: current option is ${chosen}`);
    }
    const means = {
      medicine,
      strengths,
      inhalers,
      syringes,
      deviceEnergiesJ,
      rounding: roundingFor(use, child),
    };
    const { head, option } = prepared;
    return computeLine({ head, option, use, means, child });
  });
}

/** The rounding of the source, where it holds for this child. */
function roundingFor({ rounding }: Use, { kgByBasis }: ChildFacts): VolumeRounding | undefined {
  return rounding && isWithin(kgByBasis.total, rounding.fromKg, undefined) ? rounding : undefined;
}
