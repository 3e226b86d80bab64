/**
 * The number in an IBM System/360 double of 1 to 8 bytes, big-endian, as SAS transport files store them:
 * a sign bit, a 7-bit exponent of 16 in excess 64, and a fraction. A SAS missing value gives `undefined`.
 *
 * @source sas-ts140
 */
export function ibmDouble(bytes: Uint8Array): number | undefined {
  const head = bytes[0] ?? 0;
  if (isMissing(bytes)) return undefined;
  let fraction = 0;
  for (let i = bytes.length - 1; i >= 1; i--) fraction = (fraction + (bytes[i] ?? 0)) / 256;
  const exponent = (head & 0x7f) - 64;
  const magnitude = fraction * 16 ** exponent;
  return head & 0x80 ? -magnitude : magnitude;
}

/** Missing values are `.`, `._` or `.A` to `.Z`: that character, then zero bytes. */
function isMissing(bytes: Uint8Array): boolean {
  const head = bytes[0] ?? 0;
  const letter = head === 0x2e || head === 0x5f || (head >= 0x41 && head <= 0x5a);
  return letter && bytes.subarray(1).every((byte) => byte === 0);
}
