import { Buffer } from "node:buffer";

/**
 * The file travels as Latin-1, one character a byte: whatever its encoding, the columns that are only passed on come
 * out byte for byte as they went in. Only what is read or written here is turned to and from UTF-8.
 */
export const BYTE_ENCODING = "latin1";

// biome-ignore lint/suspicious/noControlCharactersInRegex: the range is every byte beyond ASCII
const BEYOND_ASCII = /[^\x00-\x7f]/;

/** The text of a cell whose bytes are UTF-8. */
export function fromBytes(bytes: string): string {
  return BEYOND_ASCII.test(bytes) ? Buffer.from(bytes, BYTE_ENCODING).toString("utf8") : bytes;
}

/** The UTF-8 bytes of a text. */
export function toBytes(text: string): string {
  return BEYOND_ASCII.test(text) ? Buffer.from(text, "utf8").toString(BYTE_ENCODING) : text;
}
