/** Two readings of the same thing by the same observer. */
export type Pair = readonly [first: number, second: number];

/** The technical error of measurement of one reading, and how it was reached. */
export interface TechnicalError {
  readonly pairs: number;
  /** sqrt(sum d^2 / 2n), with pairs that differ by more than `slipsBeyond` set aside. */
  readonly classical: number;
  readonly slips: number;
  /** 1.4826 x median |d| / sqrt(2): hardly moved by slips. */
  readonly robust: number;
}

/**
 * Within-observer technical error of measurement. Throws a `RangeError` when there is no pair.
 *
 * @source who-mgrs-reliability-2006
 */
export function technicalError(pairs: readonly Pair[], slipsBeyond: number): TechnicalError {
  if (pairs.length === 0) throw new RangeError("Cannot compute a technical error as pairs must not be empty");
  const differences = pairs.map(([first, second]) => first - second);
  const kept = differences.filter((difference) => Math.abs(difference) <= slipsBeyond);
  const sizes = differences.map(Math.abs).sort((a, b) => a - b);
  const middle = sizes.length / 2;
  const median = ((sizes[Math.floor(middle - 0.5)] as number) + (sizes[Math.floor(middle)] as number)) / 2;
  return {
    pairs: pairs.length,
    classical: Math.sqrt(kept.reduce((sum, d) => sum + d * d, 0) / (2 * kept.length)),
    slips: differences.length - kept.length,
    robust: (1.4826 * median) / Math.SQRT2,
  };
}
