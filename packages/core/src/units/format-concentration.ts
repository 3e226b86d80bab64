import type { DoseUnit } from "./dose.ts";
import { formatQuantity } from "./format-quantity.ts";
import type { NumberStyle } from "./number-style.ts";

/**
 * A strength as mass (or units, mmol, J) per mL, never as a ratio: "0.1 mg/mL", "60 micrograms/mL".
 *
 * Stays in the unit of the label. Throws a `RangeError` when the amount is not finite.
 *
 * @source ismp-abbreviations
 *
 * ```ts
 * import { formatConcentration } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(formatConcentration({ amountPerMl: 0.1, unit: "mg" }), "0.1\u00a0mg/mL");
 * ```
 */
export function formatConcentration(
  { amountPerMl, unit }: { readonly amountPerMl: number; readonly unit: DoseUnit },
  style?: NumberStyle,
): string {
  return formatQuantity({ amount: amountPerMl, unit, per: "mL" }, style);
}
