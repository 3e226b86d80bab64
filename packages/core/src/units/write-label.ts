import type { DoseUnit } from "./dose.ts";
import { formatQuantity } from "./format-quantity.ts";
import type { NumberStyle } from "./number-style.ts";

const LABEL = /^([\d,]+(?:\.\d+)?)\s(microgram|nanogram|unit|mg|g|mmol|mL|J)s?\/(mL|puff)$/;

/**
 * A strength that a sheet holds as English text ("60 micrograms/mL", "100 micrograms/puff"), in the style of the reader's language.
 *
 * Any other text comes back as it is. Without a style the text stays English.
 *
 * ```ts
 * import { FRENCH_NUMBERS, writeLabel } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(writeLabel("0.1 mg/mL", FRENCH_NUMBERS), "0,1\u00a0mg/mL");
 * ```
 */
export function writeLabel(label: string, style: NumberStyle | undefined): string {
  const [, number, unit, per] = style === undefined ? [] : (LABEL.exec(label) ?? []);
  if (number === undefined || unit === undefined) return label;
  const amount = Number(number.replaceAll(",", ""));
  return formatQuantity({ amount, unit: unit as DoseUnit, per: per === "puff" ? "puff" : "mL" }, style);
}
