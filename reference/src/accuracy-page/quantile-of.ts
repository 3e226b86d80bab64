/** The quantile of these values, linear between order statistics. Throws a `RangeError` when there are none. */
export function quantileOf(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError("Cannot give a quantile as values must not be empty");
  const sorted = [...values].sort((a, b) => a - b);
  const position = share * (sorted.length - 1);
  const below = Math.floor(position);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (position - below) * (high - low);
}
