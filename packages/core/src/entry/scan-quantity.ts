/** A number as it was typed and the spelling of the unit behind it. */
export interface ScannedPart {
  readonly number: string;
  /** Empty when no unit follows. */
  readonly unit: string;
}

export type Scan =
  | { readonly type: "parts"; readonly parts: readonly ScannedPart[] }
  | { readonly type: "unreadable" }
  | { readonly type: "several" };

// Both are sticky and without nested repetition of the same character, so time grows with the length only.
const NUMBER = /[+\-−]?(?:\d+(?:[.,]\d*)*|[.,]\d+)(?:e[+-]?\d+)?/iy;
const UNIT = /\s*(\p{L}+|['’′]{1,2}|["”″])?\.?\s*/uy;

/** Longer than anything a person types for one quantity. */
const LONGEST = 60;

/** Splits "5 ft 4 in" into its numbers and units; says so when the text is no such sequence. */
export function scanQuantity(text: string): Scan {
  if (text.length > LONGEST) return { type: "unreadable" };
  const parts: ScannedPart[] = [];
  let at = 0;
  while (at < text.length) {
    NUMBER.lastIndex = at;
    const number = NUMBER.exec(text)?.[0];
    if (number === undefined) {
      return { type: parts.length > 0 && /\d/.test(text.slice(at)) ? "several" : "unreadable" };
    }
    UNIT.lastIndex = at + number.length;
    const unit = UNIT.exec(text);
    parts.push({ number, unit: unit?.[1] ?? "" });
    at += number.length + (unit?.[0].length ?? 0);
  }
  return parts.length > 0 ? { type: "parts", parts } : { type: "unreadable" };
}
