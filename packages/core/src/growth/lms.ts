/**
 * The distribution of one quantity at one age or length: Box-Cox power L, median M, coefficient of
 * variation S.
 */
export interface Lms {
  readonly l: number;
  readonly m: number;
  readonly s: number;
}

/** z = ((value / M)^L - 1) / (L S); ln(value / M) / S as L goes to 0. */
export function plainZ({ l, m, s }: Lms, value: number): number {
  const logRatio = Math.log(value / m);
  // expm1 keeps its digits where L is almost 0, as it is at several ages of the WHO tables.
  return l === 0 ? logRatio / s : Math.expm1(l * logRatio) / (l * s);
}

/** value = M (1 + L S z)^(1/L); NaN where no value has this z. */
export function plainValue({ l, m, s }: Lms, z: number): number {
  return l === 0 ? m * Math.exp(s * z) : m * Math.exp(Math.log1p(l * s * z) / l);
}

/**
 * z by WHO's rule for skewed quantities: beyond 3 SD the distance between 2 and 3 SD is the unit, because the
 * tails of the Box-Cox curve would claim more than the data behind them can tell.
 *
 * @source who-anthro, z-score-helper.R
 */
export function adjustedZ(lms: Lms, value: number): number {
  const z = plainZ(lms, value);
  if (z >= -3 && z <= 3) return z;
  const side = z > 0 ? 1 : -1;
  const at3 = plainValue(lms, 3 * side);
  return side * (3 + (value - at3) / (at3 - plainValue(lms, 2 * side)));
}

/** The value at a z by the same rule. */
export function adjustedValue(lms: Lms, z: number): number {
  if (z >= -3 && z <= 3) return plainValue(lms, z);
  const side = z > 0 ? 1 : -1;
  const at3 = plainValue(lms, 3 * side);
  return at3 + (side * z - 3) * (at3 - plainValue(lms, 2 * side));
}
