import { type Centimetres, centimetres, type Days } from "../units/index.ts";
import { daysToMonths } from "./age.ts";
import { requireFinite } from "./require.ts";

/** How a stature was taken: lying gives a length, standing a height. */
export type Stance = "lying" | "standing";

/** A stature as the WHO tables want it. */
export interface TableStature {
  /** Which tables it belongs to: length (lying) or height (standing). */
  readonly kind: "length" | "height";
  readonly cm: Centimetres;
}

/** Lying length less standing height, cm. @source who-anthro */
export const lyingLessStandingCm = 0.7;
/** From this day of life on the tables are for standing height. */
const standingFromDays = 731;
/** Age unknown and stance unknown: from this stature on it is taken as standing height. */
const standingFromCm = 87;
/** Nobody stands to be measured before this age; a height then is taken as a length as it is. */
const canStandFromMonths = 9;

/**
 * A stature as the WHO tables want it, in cm: length under 731 days of age, height from then on, with
 * length = height + 0.7 cm.
 *
 * Age known: the table goes by age, and 0.7 cm is added or taken off when the child was measured the other way
 * (a height under 9 months is held to be a length). Age unknown: the table goes by stance; stance unknown as
 * well: length under 87 cm, height from 87 cm on. Age is rounded to whole days, half a day up, so that
 * 24 months (730.5 days) are height.
 *
 * Inputs: `cm` greater than 0; `stance` and `ageDays` (0 or more) when known. Throws a `RangeError` otherwise.
 *
 * @source who-anthro, z-score.R and z-score-helper.R
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { monthsToDays, statureForTables } from "@steelyard/core/growth";
 * import { centimetres, months } from "@steelyard/core/units";
 *
 * const threeYears = monthsToDays(months(36));
 * const { kind, cm } = statureForTables({ cm: centimetres(95.7), stance: "lying", ageDays: threeYears });
 * assert.deepEqual([kind, cm], ["height", 95]);
 * ```
 */
export function statureForTables({
  cm,
  stance,
  ageDays,
}: {
  readonly cm: Centimetres;
  readonly stance?: Stance;
  readonly ageDays?: Days;
}): TableStature {
  requireFinite("choose a table", { cm, ageDays });
  if (cm <= 0 || (ageDays ?? 0) < 0) {
    throw new RangeError(
      `Cannot choose a table as cm must be greater than 0 and ageDays 0 or more: current values are ${cm} and ${ageDays}`,
    );
  }
  if (ageDays === undefined) {
    const standing = stance ? stance === "standing" : cm >= standingFromCm;
    return { kind: standing ? "height" : "length", cm };
  }
  if (Math.floor(ageDays + 0.5) >= standingFromDays) {
    return { kind: "height", cm: stance === "lying" ? lengthToHeight(cm) : cm };
  }
  const tooYoung = daysToMonths(ageDays) < canStandFromMonths;
  return { kind: "length", cm: stance === "standing" && !tooYoung ? heightToLength(cm) : cm };
}

/**
 * Standing height in cm from lying length in cm: height = length - 0.7.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { lengthToHeight } from "@steelyard/core/growth";
 * import { centimetres } from "@steelyard/core/units";
 *
 * assert.equal(lengthToHeight(centimetres(95.7)), 95);
 * ```
 */
export function lengthToHeight(lengthCm: Centimetres): Centimetres {
  return centimetres(tidy(lengthCm - lyingLessStandingCm));
}

/**
 * Lying length in cm from standing height in cm: length = height + 0.7.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { heightToLength } from "@steelyard/core/growth";
 * import { centimetres } from "@steelyard/core/units";
 *
 * assert.equal(heightToLength(centimetres(80)), 80.7);
 * ```
 */
export function heightToLength(heightCm: Centimetres): Centimetres {
  return centimetres(tidy(heightCm + lyingLessStandingCm));
}

/** 95.7 - 0.7 is 95, not 95.00000000000001. */
function tidy(cm: number): number {
  return Math.round(cm * 1e9) / 1e9;
}
