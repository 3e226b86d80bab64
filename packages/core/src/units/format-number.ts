import { ENGLISH_NUMBERS, type NumberStyle } from "./number-style.ts";

/** Digits up to which a number is written as it is; longer ones come from a division and are cut to four. */
const DIGITS_KEPT = 6;
const DIGITS_ROUNDED = 4;

/**
 * A number as safe-medication rules write it: a leading zero, no trailing zero, a comma in thousands, no exponent.
 *
 * Up to six digits are written as they are. A longer number is rounded to four digits, never within its
 * integer part. `style` is that of the reader's language, English where absent: a decimal comma and groups parted by
 * a narrow space in French. Takes any finite number; throws a `RangeError` otherwise.
 *
 * @source ismp-abbreviations
 *
 * ```ts
 * import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
 * import assert from "node:assert/strict";
 * assert.equal(formatNumber(0.1 * 3), "0.3");
 * assert.equal(formatNumber(1500), "1,500");
 * assert.equal(formatNumber(136.5, FRENCH_NUMBERS), "136,5");
 * ```
 */
export function formatNumber(value: number, style: NumberStyle = ENGLISH_NUMBERS): string {
  if (!Number.isFinite(value)) {
    throw new RangeError(`Cannot write a number as it must be finite: current value is ${value}`);
  }
  const [digits, point] = decimalDigits(shorten(Math.abs(value)));
  const whole = point > 0 ? digits.slice(0, point).padEnd(point, "0") : "0";
  const decimals = point > 0 ? digits.slice(point) : "0".repeat(-point) + digits;
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, style.groupMark);
  const sign = value < 0 && /[1-9]/.test(digits) ? "−" : "";
  return sign + grouped + (decimals === "" ? "" : style.decimalMark + decimals);
}

function shorten(value: number): number {
  const [digits, point] = decimalDigits(value);
  if (digits.length <= DIGITS_KEPT || point >= digits.length) return value;
  return point >= DIGITS_ROUNDED ? Math.round(value) : Number(value.toPrecision(DIGITS_ROUNDED));
}

/** The significant digits, none of them a trailing zero, and where the decimal point stands among them: 0.012 is ["12", -1]. */
function decimalDigits(value: number): [digits: string, point: number] {
  const [mantissa = "", exponent = "0"] = value.toExponential().split("e");
  return [mantissa.replace(".", ""), Number(exponent) + 1];
}
