export interface SeededRandom {
  /** In (0, 1). */
  readonly uniform: () => number;
  readonly normal: () => number;
}

/** Marsaglia's xorshift of 32 bits and the polar method for normals: the same draws on every machine. */
export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0 || 1;
  const uniform = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) + 0.5) / 2 ** 32;
  };
  for (let i = 0; i < 20; i++) uniform();
  const normal = (): number => {
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const square = u * u + v * v;
      if (square > 0 && square < 1) return u * Math.sqrt((-2 * Math.log(square)) / square);
    }
  };
  return { uniform, normal };
}
