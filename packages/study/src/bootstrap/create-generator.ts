/** Numbers by chance from a seed, the same on every machine. */
export interface Generator {
  /** A whole number from 0 to 2^32 - 1. */
  readonly next32: () => number;
  /** In [0, 1), 32 bits fine. */
  readonly uniform: () => number;
  /** Standard normal, by the polar method. */
  readonly normal: () => number;
}

/**
 * A seeded generator of chance (xoshiro128++, its state filled by splitmix32 steps): the same seed gives the same numbers everywhere.
 *
 * `seed`: a whole number from 0 to 2^32 - 1; throws a `RangeError` otherwise. Not for secrets.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createGenerator } from "@steelyard/study/bootstrap";
 *
 * assert.equal(createGenerator(7).next32(), createGenerator(7).next32());
 * ```
 *
 * @source blackman-vigna-2021
 */
export function createGenerator(seed: number): Generator {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff)
    throw new RangeError(
      `Cannot create a generator as seed must be a whole number in [0, 4294967295]: current value is ${seed}`,
    );
  let fill = seed | 0;
  const word = (): number => {
    fill = (fill + 0x9e3779b9) | 0;
    let t = Math.imul(fill ^ (fill >>> 16), 0x21f0aaad);
    t = Math.imul(t ^ (t >>> 15), 0x735a2d97);
    return t ^ (t >>> 15);
  };
  let [a, b, c, d] = [word(), word(), word(), word()];
  const next32 = (): number => {
    const sum = (a + d) | 0;
    const result = (((sum << 7) | (sum >>> 25)) + a) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = (d << 11) | (d >>> 21);
    return result;
  };
  const uniform = (): number => next32() / 4294967296;
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  return { next32, uniform, normal };
}
