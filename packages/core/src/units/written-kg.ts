/**
 * A weight as it is written everywhere and enters the arithmetic of a dose, kg, so that the reader can repeat the sum from what
 * stands on the page.
 *
 * An estimate to 0.1 kg (0.01 kg under 3 kg), a weight from a scale to 0.01 kg: in each case less than a tenth of what is known of it,
 * or of what one mark of a syringe moves the dose. Never 0. Any weight above 0; `measured` where it was read from a scale.
 *
 * ```ts
 * import { writtenKg } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(writtenKg(28.4028), 28.4);
 * assert.equal(writtenKg(2.3456), 2.35);
 * assert.equal(writtenKg(12.344, { measured: true }), 12.34);
 * ```
 */
export function writtenKg(kg: number, { measured = false }: { readonly measured?: boolean } = {}): number {
  const perKg = measured || kg < 3 ? 100 : 10;
  return Math.max(1, Math.round(kg * perKg)) / perKg;
}
