import type { Dose } from "@steelyard/core/dosing";
import type { Difference } from "./compare-formularies.ts";
import { plainDose } from "./readable-value.ts";

/**
 * One difference as a pharmacist reads it: "adrenaline, use anaphylaxis-im: maximum 500 → 300 micrograms".
 *
 * ```ts
 * import { describeDifference } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const sentence = describeDifference({
 *   place: "adrenaline",
 *   field: "maximum",
 *   change: "changed",
 *   from: { amount: 500, unit: "microgram" },
 *   to: { amount: 300, unit: "microgram" },
 * });
 * assert.equal(sentence, "adrenaline: maximum 500 → 300 micrograms");
 * ```
 */
export function describeDifference({ place, field, change, from, to }: Difference): string {
  return `${place}: ${field} ${whatChanged(change, from, to)}`;
}

function whatChanged(change: Difference["change"], from: Difference["from"], to: Difference["to"]): string {
  if (change === "added") return to === undefined ? "is new" : `added: ${shown(to)}`;
  if (change === "removed") return from === undefined ? "is gone" : `removed: ${shown(from)}`;
  if (isDose(from) && isDose(to)) return doseChange(from, to);
  return `${quoted(from)} → ${quoted(to)}`;
}

/** The unit stands once where both have it: "500 → 300 micrograms", "1 mg → 500 micrograms". */
function doseChange(from: Dose, to: Dose): string {
  const [before, after] = [plainDose(from), plainDose(to)];
  const unit = (text: string): string => text.slice(text.indexOf(" ") + 1).replace(/s(?=\/|$)/, "");
  return unit(before) === unit(after)
    ? `${before.slice(0, before.indexOf(" "))} → ${after}`
    : `${before} → ${after}`;
}

function isDose(value: string | Dose | undefined): value is Dose {
  return typeof value === "object";
}

function shown(value: string | Dose): string {
  return isDose(value) ? plainDose(value) : value;
}

/** Words in quotation marks, numbers bare. */
function quoted(value: string | Dose | undefined): string {
  if (value === undefined) return "nothing";
  if (isDose(value)) return plainDose(value);
  return /^\d/.test(value) ? value : `"${value}"`;
}
