/** A plain number with a point or comma; undefined for anything else. */
export function readDecimal(text: string): number | undefined {
  const plain = text.trim().replace(",", ".");
  return /^\d+(\.\d+)?$|^\.\d+$/.test(plain) ? Number(plain) : undefined;
}
