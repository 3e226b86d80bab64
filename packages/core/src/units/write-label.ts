import type { DoseUnit } from "./dose.ts";
import { formatConcentration } from "./format-concentration.ts";
import type { NumberStyle } from "./number-style.ts";

const LABEL = /^([\d,]+(?:\.\d+)?)\s(microgram|nanogram|unit|mg|g|mmol|mL|J)s?\/mL$/;

/**
 * A strength that a sheet holds as English text ("60 micrograms/mL"), in the style of the reader's language.
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
  const [, amount, unit] = style === undefined ? [] : (LABEL.exec(label) ?? []);
  if (amount === undefined || unit === undefined) return label;
  const amountPerMl = Number(amount.replaceAll(",", ""));
  return formatConcentration({ amountPerMl, unit: unit as DoseUnit }, style);
}
