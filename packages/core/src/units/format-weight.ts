import { formatNumber } from "./format-number.ts";
import type { NumberStyle } from "./number-style.ts";

/**
 * A weight as it enters a dose, in kg: "28.1 kg". Throws a `RangeError` when it is not finite.
 *
 * ```ts
 * import { formatWeight } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(formatWeight(28.1), "28.1\u00a0kg");
 * ```
 */
export function formatWeight(kg: number, style?: NumberStyle): string {
  return `${formatNumber(kg, style)}\u00a0kg`;
}
