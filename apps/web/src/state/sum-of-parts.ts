/**
 * The sum of two or three lengths written as one: "150 + 22,5" is how a child longer than the tape is measured.
 * Undefined for anything else.
 */
export function sumOfParts(text: string): string | undefined {
  if (!/^\s*\d+([.,]\d+)?(\s*\+\s*\d+([.,]\d+)?){1,2}\s*$/.test(text)) return undefined;
  const sum = text.split("+").reduce((total, part) => total + Number(part.trim().replace(",", ".")), 0);
  return String(Math.round(sum * 100) / 100);
}
