import { unzlibSync } from "fflate";

const HEADER = 12;
const ENTRY = 16;

/** A font file as OpenType, from WOFF 1.0 (W3C Recommendation of 2012): each table unpacked, and its entry in the directory written anew. */
export function unpackFont(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.byteLength < 44 || from.getUint32(0) !== 0x774f4646)
    throw new TypeError("Cannot unpack a font as it must be WOFF 1.0: current value is something else");
  const tables = Array.from({ length: from.getUint16(12) }, (_, i) => {
    const at = 44 + 20 * i;
    const offset = from.getUint32(at + 4);
    const packed = woff.subarray(offset, offset + from.getUint32(at + 8));
    const length = from.getUint32(at + 12);
    return {
      tag: from.getUint32(at),
      checksum: from.getUint32(at + 16),
      bytes: packed.length < length ? unzlibSync(packed) : packed,
    };
  });
  const padded = (length: number): number => 4 * Math.ceil(length / 4);
  const size = tables.reduce((sum, { bytes }) => sum + padded(bytes.length), HEADER + ENTRY * tables.length);
  const font = new Uint8Array(size);
  const to = new DataView(font.buffer);
  const power = Math.floor(Math.log2(tables.length));
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, tables.length);
  to.setUint16(6, 16 * 2 ** power);
  to.setUint16(8, power);
  to.setUint16(10, 16 * (tables.length - 2 ** power));
  let next = HEADER + ENTRY * tables.length;
  for (const [i, { tag, checksum, bytes }] of tables.entries()) {
    const at = HEADER + ENTRY * i;
    to.setUint32(at, tag);
    to.setUint32(at + 4, checksum);
    to.setUint32(at + 8, next);
    to.setUint32(at + 12, bytes.length);
    font.set(bytes, next);
    next += padded(bytes.length);
  }
  return font;
}
