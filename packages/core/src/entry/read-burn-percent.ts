import { err, ok, type Result } from "../result.ts";
import { readDecimal } from "./read-decimal.ts";

/** Why a typed share of burnt body surface cannot be taken. */
export type BurnPercentIssue =
  | { readonly type: "empty" }
  | { readonly type: "not-a-number"; readonly text: string }
  /** Not above 0 %, or more than the whole. */
  | { readonly type: "out-of-limits"; readonly value: number; readonly low: 0; readonly high: 100 };

/**
 * The burnt share of the total body surface (TBSA), %, from what a person typed: "18", "18 %", "7,5".
 *
 * Above 0 to 100. Returns an issue for anything else; nothing is guessed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readBurnPercent } from "@steelyard/core/entry";
 * assert.deepEqual(readBurnPercent("18 %"), { ok: true, value: 18 });
 * const read = readBurnPercent("140");
 * assert.deepEqual(read.ok || read.error, { type: "out-of-limits", value: 140, low: 0, high: 100 });
 * ```
 */
export function readBurnPercent(text: string): Result<number, BurnPercentIssue> {
  const typed = text.trim();
  if (typed === "") return err({ type: "empty" });
  const number = typed.replace(/\s*%$/, "");
  const decimal = /^[-−+]?[\d.,]+$/.test(number) ? readDecimal(number) : undefined;
  if (decimal?.type !== "number") return err({ type: "not-a-number", text: typed });
  const { value } = decimal;
  return value > 0 && value <= 100 ? ok(value) : err({ type: "out-of-limits", value, low: 0, high: 100 });
}
