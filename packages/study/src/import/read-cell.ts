import type { DecimalMark } from "@steelyard/core/entry";

/** What programs write for a missing value. */
const MISSING = new Set(["", "na", "n/a", "null", "nan", ".", "-", "none", "missing", "#n/a"]);

/** Whether a cell says that nothing is known. */
export function isMissingCell(cell: string): boolean {
  if (cell === "") return true;
  const code = cell.charCodeAt(0);
  return !(code >= 48 && code <= 57) && MISSING.has(cell.trim().toLowerCase());
}

/** Powers of ten that a double divides by exactly once. */
const TENTHS = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/**
 * The number of a cell, or NaN: "that is for a slower look". Digits with at most one decimal mark are read without making a text of
 * them; 15 digits divided by a power of ten give the nearest double, as `Number` does.
 */
export function cellNumber(cell: string, decimalMark: DecimalMark): number {
  const mark = decimalMark === "," ? 44 : 46;
  const { length } = cell;
  if (length === 0 || length > 14) return slowNumber(cell, decimalMark);
  let whole = 0;
  let decimals = -1;
  for (let i = 0; i < length; i++) {
    const code = cell.charCodeAt(i);
    if (code >= 48 && code <= 57) {
      whole = whole * 10 + (code - 48);
      if (decimals >= 0) decimals++;
    } else if (code === mark && decimals < 0) decimals = 0;
    else return slowNumber(cell, decimalMark);
  }
  if (decimals === 0 || decimals > 9) return slowNumber(cell, decimalMark);
  return decimals < 0 ? whole : whole / (TENTHS[decimals] as number);
}

function slowNumber(cell: string, decimalMark: DecimalMark): number {
  const text = cell.trim();
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(text)) return Number.NaN;
  const other = decimalMark === "," ? "." : ",";
  // The other mark may part thousands: only what cannot be that is taken.
  if (text.includes(other) && /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return Number.NaN;
  return Number(text.replace(",", "."));
}
