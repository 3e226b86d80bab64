import type { Dose, DoseUnit } from "./dose.ts";
import { formatNumber } from "./format-number.ts";
import { ENGLISH_NUMBERS, type NumberStyle } from "./number-style.ts";
import { withoutDrift } from "./without-drift.ts";

/** Between a number and its unit, so that no line ends between them. */
const NO_BREAK_SPACE = "\u00a0";

/** Mass units in falling order; a dose moves along them until it is neither under 1 nor needlessly long. */
const SMALLER: Partial<Record<DoseUnit, DoseUnit>> = { g: "mg", mg: "microgram", microgram: "nanogram" };
const LARGER: Partial<Record<DoseUnit, DoseUnit>> = { nanogram: "microgram", microgram: "mg" };

/**
 * A dose, volume, rate or energy as people read it: "281 micrograms", "0.5 mL", "1,500 mg", "0.1 micrograms/kg/min".
 *
 * The only way a dose is printed. Units that are easily misread are spelled out; a no-break space stands before
 * the unit. A plain mass under 1 is written in the next smaller unit, and 1,000 micrograms or more in mg, so
 * that no decimal point is left where none is needed; doses per kg or per time stay in the unit they are given in.
 * `style` is that of the reader's language, English where absent.
 * Throws a `RangeError` when the amount is not finite.
 *
 * @source ismp-abbreviations
 * @source bnfc-prescription-writing
 *
 * ```ts
 * import { FRENCH_NUMBERS, formatQuantity } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(formatQuantity({ amount: 0.5, unit: "mg" }), "500\u00a0micrograms");
 * assert.equal(formatQuantity({ amount: 1000, unit: "microgram" }), "1\u00a0mg");
 * assert.equal(formatQuantity({ amount: 2.5, unit: "unit" }, FRENCH_NUMBERS), "2,5\u00a0unités");
 * assert.equal(formatQuantity({ amount: 0.1, unit: "microgram", per: "kg/min" }), "0.1\u00a0micrograms/kg/min");
 * ```
 */
export function formatQuantity(dose: Dose, style: NumberStyle = ENGLISH_NUMBERS): string {
  const { amount, unit } = dose.per === undefined ? inReadableUnit(dose) : dose;
  const per =
    dose.per === undefined ? "" : `/${dose.per.replace("m2", "m²").replace("puff", style.puff.one)}`;
  return `${formatNumber(amount, style)}${NO_BREAK_SPACE}${unitName(unit, amount, style)}${per}`;
}

/** The unit in words or as its symbol: "micrograms" for 10, "microgram" for 1, "mL" for any. */
function unitName(unit: DoseUnit, amount: number, style: NumberStyle): string {
  const isInWords = unit === "microgram" || unit === "nanogram" || unit === "unit" || unit === "puff";
  return isInWords ? style[unit][style.plural(amount)] : unit;
}

function inReadableUnit({ amount, unit }: Dose): Dose {
  const smaller = SMALLER[unit];
  const larger = LARGER[unit];
  if (amount > 0 && amount < 1 && smaller !== undefined) {
    return inReadableUnit({ amount: withoutDrift(amount * 1000), unit: smaller });
  }
  if (amount >= 1000 && larger !== undefined) {
    return inReadableUnit({ amount: withoutDrift(amount / 1000), unit: larger });
  }
  return { amount, unit };
}
