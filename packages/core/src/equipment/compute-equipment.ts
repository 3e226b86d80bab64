import { type ChildSizeInput, childSize } from "../lookup/index.ts";
import { bloodPressureCuff, usualBladders } from "./blood-pressure-cuff.ts";
import { bag, mask, measuredAirways, tidalVolume, ventilationRates } from "./breathing.ts";
import { defibrillatorPads } from "./defibrillator-pads.ts";
import type { Bladder, EquipmentLine } from "./equipment-line.ts";
import { laryngoscopeBlade } from "./laryngoscope-blade.ts";
import { supraglotticAirway } from "./supraglottic-airway.ts";
import { trachealTube } from "./tracheal-tube.ts";
import { nasalDepth, oralDepth } from "./tube-depth.ts";
import { tubeFollowers } from "./tube-followers.ts";
import { cannula, intraosseousNeedle } from "./vascular-access.ts";

export interface EquipmentInput extends ChildSizeInput {
  /** Bladders of the blood-pressure cuffs at hand, in any order; a usual set when absent. */
  readonly bladders?: readonly Bladder[] | undefined;
}

const TASK = "choose equipment";

/**
 * Sizes of equipment for one child, one line an item, always the same lines in the same order.
 *
 * Each by its published rule: age rules on the age, or on the height-age where only the length is known, and marked
 * so; airways on ideal weight; the blood-pressure bladder on 40 % of the arm. A line without a size says why.
 *
 * Inputs: `totalKg` (more than 0), and any of `ageMonths` (0 or more), `lengthCm` and `armMm` (more than 0), `sex`,
 * `idealKg`, `bladders`. Gives lines with value, unit, other published sizes, working, warnings and sources. Throws a
 * `RangeError` on numbers that are not finite or out of these ranges, and on an empty list of bladders.
 *
 * @source park2022
 * @source hunyady2008
 * @source supraglottic-weight-ranges
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { computeEquipment } from "@steelyard/core/equipment";
 *
 * const lines = computeEquipment({ ageMonths: 48, totalKg: 16, armMm: 160 });
 * const tube = lines.find(({ id }) => id === "tracheal-tube.uncuffed");
 * assert.ok(tube?.unavailable === undefined && tube?.value === 5);
 * const cuff = lines.find(({ id }) => id === "blood-pressure-cuff");
 * assert.ok(cuff?.unavailable === undefined && cuff?.value === 6);
 * ```
 */
export function computeEquipment({
  bladders = usualBladders,
  ...input
}: EquipmentInput): readonly EquipmentLine[] {
  const child = childSize(TASK, input);
  if (bladders.length === 0) {
    throw new RangeError(`Cannot ${TASK} as bladders must not be empty: current value is []`);
  }
  for (const { widthCm, lengthCm } of bladders) {
    if (!(widthCm > 0 && lengthCm > 0 && Number.isFinite(widthCm) && Number.isFinite(lengthCm))) {
      throw new RangeError(
        `Cannot ${TASK} as bladders must be more than 0 cm: current value is ${widthCm} x ${lengthCm}`,
      );
    }
  }
  return [
    mask(child),
    bag(child),
    ...measuredAirways(child),
    trachealTube(child, "cuffed"),
    trachealTube(child, "uncuffed"),
    oralDepth(child),
    nasalDepth(child),
    laryngoscopeBlade(child),
    supraglotticAirway(child, "mask-type"),
    supraglotticAirway(child, "gel-type"),
    tidalVolume(child),
    ...ventilationRates(child),
    ...tubeFollowers(child),
    cannula(child),
    intraosseousNeedle(child),
    bloodPressureCuff(child, bladders),
    defibrillatorPads(child),
  ];
}
