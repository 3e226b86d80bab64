/** Without case and accents, for searching. */
export function plainText(text: string): string {
  return text.normalize("NFD").replaceAll(/\p{M}/gu, "").toLowerCase();
}
