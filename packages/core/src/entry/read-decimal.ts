export type DecimalMark = "." | ",";

export type Decimal =
  | { readonly type: "number"; readonly value: number }
  /** Both readings are possible. */
  | { readonly type: "ambiguous"; readonly readings: readonly [number, number] }
  | { readonly type: "unreadable" };

/**
 * Reads a number whose decimal mark may be a point or a comma.
 *
 * A point is always the decimal mark and so is a comma, except where a comma may as well part thousands
 * ("1,360"). Where the mark of the source is known (`mark`), that settles it. Two marks in one number
 * ("1,360.5") are never guessed at.
 */
export function readDecimal(text: string, mark?: DecimalMark): Decimal {
  const plain = text.replace("−", "-");
  const marks = plain.match(/[.,]/g) ?? [];
  if (marks.length > 1) return { type: "unreadable" };
  const decimal = Number(plain.replace(",", "."));
  if (!Number.isFinite(decimal)) return { type: "unreadable" };

  const looksLikeThousands = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(plain);
  const mayPartThousands = mark === undefined ? marks[0] === "," : marks[0] !== mark;
  return looksLikeThousands && mayPartThousands
    ? { type: "ambiguous", readings: [decimal, Number(plain.replace(/[.,]/, ""))] }
    : { type: "number", value: decimal };
}
