/** Digits that cannot lose precision or overflow. */
const LONGEST = 12;

/**
 * The number a plain text such as `136` or `85.5` stands for, or NaN when the text is anything else.
 *
 * Nearly every cell of a file is of this kind, and telling so takes a tenth of the time of the full grammar.
 * NaN stays inside this folder: it means "read it with the grammar".
 */
export function plainNumber(text: string): number {
  if (text.length === 0 || text.length > LONGEST) return Number.NaN;
  let points = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 46) points++;
    else if (code < 48 || code > 57) return Number.NaN;
  }
  return points > 1 ? Number.NaN : Number(text);
}
