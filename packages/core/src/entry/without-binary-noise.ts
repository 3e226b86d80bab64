/** Nine decimals are far beyond any tape, scale or calendar. */
const PLACES = 1e9;

/** 1.1 m x 100 is 110 cm, not 110.00000000000001: drops what binary arithmetic adds to a decimal number. */
export function withoutBinaryNoise(value: number): number {
  return Math.round(value * PLACES) / PLACES;
}
