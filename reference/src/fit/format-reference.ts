import type { BodyReference } from "@steelyard/core/body";

/** The reference as JSON text with one line per curve, so that a change can be read. */
export function formatReference(reference: BodyReference): string {
  const text = JSON.stringify(reference, null, 1);
  // Arrays of numbers go on one line.
  return `${text.replace(/\[\s+([-\d.e,\s]+?)\s+\]/g, (_, numbers: string) => `[${numbers.replace(/\s+/g, "")}]`)}\n`;
}
