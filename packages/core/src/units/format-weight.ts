import { formatNumber } from "./format-number.ts";

/** A weight as it enters a dose, in kg: "28.1 kg". Throws a `RangeError` when it is not finite. */
export function formatWeight(kg: number): string {
  return `${formatNumber(kg)}\u00a0kg`;
}
